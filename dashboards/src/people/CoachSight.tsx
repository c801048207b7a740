import { useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Grant, NewGrant } from '../api/types.ts';
import { usePages } from '../api/usePages.ts';
import { More } from '../components/coming/More.tsx';
import { Failure, Loaded } from '../components/coming/states.tsx';
import { Works } from '../components/focus/Works.tsx';
import { useSending } from '../components/sending/useSending.ts';
import { Moment } from '../components/told/Moment.tsx';
import { Opens } from '../forms/Opens.tsx';
import { peopleWords } from '../words/people.ts';
import { words } from '../words.ts';
import { GrantForm } from './GrantForm.tsx';
import { joinLink, ShownOnce } from './ShownOnce.tsx';

const AT_ONCE = 50;

/** Who of other accounts sees a coach, since when and until when; a dealer lets in and ends it. */
export function CoachSight({ coachId }: { readonly coachId: string }) {
  const say = peopleWords.sight;
  const list = usePages<Grant>(`/coaches/${coachId}/grants`, AT_ONCE);
  const [made, setMade] = useState<NewGrant | null>(null);
  return (
    <section aria-labelledby="sight">
      <h2 id="sight">{say.title}</h2>
      <p class="about">{say.lead}</p>
      {made?.invitation !== undefined && (
        <ShownOnce
          label={say.link}
          about={say.linkOnce(made.email)}
          text={joinLink(made.invitation)}
          close={say.linkKept}
          onClose={() => setMade(null)}
        />
      )}
      <Loaded load={list.first}>
        {() => (
          <Works items={list.items} none={say.nobody}>
            {(grant) => <GrantLine key={grant.id} grant={grant} onEnded={list.first.reload} />}
          </Works>
        )}
      </Loaded>
      <More list={list} />
      <Opens title={say.let}>
        <GrantForm
          coachId={coachId}
          onDone={(grant) => {
            setMade(grant);
            list.first.reload();
          }}
        />
      </Opens>
    </section>
  );
}

function GrantLine({ grant, onEnded }: { readonly grant: Grant; readonly onEnded: () => void }) {
  const say = peopleWords.sight;
  const { busy, problem, send } = useSending();
  const who = grant.name ?? grant.email;
  const isOver = grant.until !== null && Date.parse(grant.until) <= Date.now();
  const end = async () => {
    if (await send(async () => call(`/grants/${grant.id}`, { method: 'DELETE' }))) onEnded();
  };
  return (
    <li>
      <strong dir="auto">{who}</strong>{' '}
      <span class="about">
        {peopleWords.roles[grant.role]}
        {words.joint}
        {say.since} <Moment at={grant.createdAt} />
        {grant.until !== null && (
          <>
            {words.joint}
            {isOver ? say.over : say.untilWord} <Moment at={grant.until} />
          </>
        )}
        {grant.name === null && `${words.joint}${say.notJoined}`}
      </span>{' '}
      <button type="button" class="quiet" aria-disabled={busy} onClick={end}>
        {busy ? say.ending : say.end(who)}
      </button>
      {problem !== null && <Failure problem={problem} />}
    </li>
  );
}
