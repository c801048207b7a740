import { useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Account, RetentionRun } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { usePages } from '../api/usePages.ts';
import { More } from '../components/coming/More.tsx';
import { Failure, Loaded } from '../components/coming/states.tsx';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { useSending } from '../components/sending/useSending.ts';
import { Moment } from '../components/told/Moment.tsx';
import { Scroll } from '../components/told/Scroll.tsx';
import { plainCount, plainNumber } from '../format.ts';
import { SelectField } from '../forms/SelectField.tsx';
import { ForDealers } from '../people/ForDealers.tsx';
import { keptWords } from '../words/kept.ts';

const RUNS_AT_ONCE = 20;
const BYTES_PER_MEGABYTE = 1e6;
const FOR_EVER = '';
/** Spans that are offered, in months, besides the one that is set. */
const OFFERED = [6, 12, 24, 36, 60, 120];

/** How long the samples of an account's strokes are kept: for its dealers. */
export function KeptPage() {
  return (
    <ForDealers title={keptWords.title}>
      <Kept />
    </ForDealers>
  );
}

function Kept() {
  const load = useLoad<Account>('/account');
  return (
    <section class="narrow">
      <PageTitle text={keptWords.title} />
      <p class="lead">{keptWords.lead}</p>
      <Loaded load={load}>{(account) => <ChooseSpan set={account.traceMonths} />}</Loaded>
      <Removed />
    </section>
  );
}

const optionOf = (months: number | null): string => (months === null ? FOR_EVER : String(months));

/** What is chosen says what it means, and is sent by a button of its own: what it removes is gone. */
function ChooseSpan({ set }: { readonly set: number | null }) {
  const say = keptWords;
  const [kept, setKept] = useState(set);
  const [chosen, setChosen] = useState(optionOf(set));
  const [saved, setSaved] = useState(false);
  const { busy, problem, send } = useSending();
  const months = chosen === FOR_EVER ? null : Number(chosen);
  const isShorter = months !== null && (kept === null || months < kept);
  const spans = [...new Set([...OFFERED, ...(kept === null ? [] : [kept])])].sort((a, b) => a - b);
  const save = () =>
    send(async () => {
      const account = await call<Account>('/account', { method: 'PATCH', body: { traceMonths: months } });
      setKept(account.traceMonths);
      setSaved(true);
    });
  return (
    <form
      class="inline-form"
      onSubmit={async (event) => {
        event.preventDefault();
        await save();
      }}
    >
      {problem !== null && <Failure problem={problem} />}
      <SelectField
        label={say.keep}
        value={chosen}
        options={[
          [FOR_EVER, say.forEver],
          ...spans.map((span): [string, string] => [String(span), say.months(span)]),
        ]}
        onChange={(value) => {
          setChosen(value);
          setSaved(false);
        }}
      />
      <p>{months === null ? say.meansNothing : say.means(say.months(months))}</p>
      {months !== kept && (
        <button type="submit" class={isShorter ? 'danger' : 'main-action'} aria-disabled={busy}>
          {busy ? say.saving : isShorter ? say.remove : months === null ? say.keepAll : say.keepLonger}
        </button>
      )}
      <p role="status" class="about">
        {saved && problem === null ? say.saved : ''}
      </p>
    </form>
  );
}

/** What the setting removed, night by night. */
function Removed() {
  const say = keptWords;
  const list = usePages<RetentionRun>('/account/retention-runs', RUNS_AT_ONCE);
  return (
    <section aria-labelledby="removed">
      <h2 id="removed">{say.runs}</h2>
      <Loaded load={list.first}>
        {() =>
          list.items.length === 0 ? (
            <p class="about">{say.noRuns}</p>
          ) : (
            <Scroll of={say.runs}>
              <table>
                <thead>
                  <tr>
                    <th scope="col">{say.when}</th>
                    <th scope="col">{say.older}</th>
                    <th scope="col" class="number">
                      {say.recordings}
                    </th>
                    <th scope="col" class="number">
                      {say.size}
                    </th>
                  </tr>
                </thead>
                <tbody>
                  {list.items.map((run) => (
                    <tr key={run.id}>
                      <th scope="row">
                        <Moment at={run.ranAt} />
                      </th>
                      <td>{say.months(run.traceMonths)}</td>
                      <td class="number">{plainCount(run.tracesRemoved)}</td>
                      <td class="number">
                        {say.megabytes(plainNumber(run.bytesRemoved / BYTES_PER_MEGABYTE))}
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </Scroll>
          )
        }
      </Loaded>
      <More list={list} />
    </section>
  );
}
