import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { OverviewSummary, Verdict } from '../api/types.ts';
import { Field } from '../components/sending/Field.tsx';
import { Tick } from '../components/sending/Tick.tsx';
import { VERDICT_ORDER } from '../concern.ts';
import { SelectField } from '../forms/SelectField.tsx';
import { words } from '../words.ts';
import { askedInWords, asksForAll, type LotQuestion, SORTS } from './question.ts';

/** So long after the last letter the search begins. */
const TYPED_FOR_MS = 250;

interface FiltersProps {
  readonly question: LotQuestion;
  readonly summary: OverviewSummary | null;
  readonly mayAskChanged: boolean;
  readonly onChange: (question: LotQuestion) => void;
}

/** The names with one that is asked for already, though nothing has it any more. */
const withAny = (names: readonly string[], asked: string): [string, string][] => [
  ['', words.lot.any],
  ...(asked === '' || names.includes(asked) ? names : [asked, ...names]).map((name): [string, string] => [
    name,
    name,
  ]),
];

function Search({ value, onChange }: { readonly value: string; readonly onChange: (text: string) => void }) {
  const [typed, setTyped] = useState(value);
  /** What was asked for here comes back by the address, without its spaces: nothing that is being typed gives way to it. */
  const asked = useRef(value);
  useEffect(() => {
    if (value === asked.current) return;
    asked.current = value;
    setTyped(value);
  }, [value]);
  useEffect(() => {
    const text = typed.trim();
    if (text === asked.current) return;
    const timer = setTimeout(() => {
      asked.current = text;
      onChange(text);
    }, TYPED_FOR_MS);
    return () => clearTimeout(timer);
  }, [typed, onChange]);
  return (
    <Field label={words.lot.search}>
      {(ids) => (
        <input
          {...ids}
          type="search"
          dir="auto"
          maxLength={300}
          autocomplete="off"
          value={typed}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      )}
    </Field>
  );
}

/**
 * Search, filters and order of the list; they stand in the address, so that a link or a step back keeps them. Where a
 * screen has room for them they are always open: by its width alone, since the service draws them without knowing it.
 */
export function Filters({ question, summary, mayAskChanged, onChange }: FiltersProps) {
  const say = words.lot;
  const set = (part: Partial<LotQuestion>) => onChange({ ...question, ...part });
  const [opened, setOpened] = useState(!asksForAll({ ...question, q: '' }));
  const id = useId();
  return (
    <>
      <p class="on-paper">{askedInWords(question).join(words.joint)}</p>
      <search aria-label={say.filters} class="find">
        <Search value={question.q} onChange={(q) => set({ q })} />
        <button
          type="button"
          class="quiet unfold"
          aria-expanded={opened}
          aria-controls={id}
          onClick={() => setOpened(!opened)}
        >
          {say.more}
        </button>
        <div id={id} class="filters" data-folded={!opened}>
          <SelectField<Verdict | ''>
            label={say.verdict}
            value={question.verdict}
            options={[
              ['', say.any],
              ...VERDICT_ORDER.map((verdict): [Verdict, string] => [verdict, words.verdicts[verdict].word]),
            ]}
            onChange={(verdict) => set({ verdict })}
          />
          <SelectField
            label={say.model}
            value={question.model}
            options={withAny(summary?.models ?? [], question.model)}
            onChange={(model) => set({ model })}
          />
          <SelectField
            label={say.room}
            value={question.room}
            options={withAny(summary?.roomNames ?? [], question.room)}
            onChange={(room) => set({ room })}
          />
          <SelectField
            label={say.sort}
            value={question.sort}
            options={SORTS.map((sort): [typeof sort, string] => [sort, say.sorts[sort]])}
            onChange={(sort) => set({ sort })}
          />
          <div class="ticks">
            <Tick label={say.onlySilent} on={question.silent} onChange={(silent) => set({ silent })} />
            {mayAskChanged && (
              <Tick label={say.onlyChanged} on={question.changed} onChange={(changed) => set({ changed })} />
            )}
          </div>
        </div>
        {!asksForAll(question) && (
          <button
            type="button"
            class="quiet"
            onClick={() => set({ q: '', model: '', room: '', verdict: '', silent: false, changed: false })}
          >
            {say.reset}
          </button>
        )}
      </search>
    </>
  );
}
