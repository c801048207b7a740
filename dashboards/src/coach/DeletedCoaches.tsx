import { call } from '../api/client.ts';
import type { Coach } from '../api/types.ts';
import { usePages } from '../api/usePages.ts';
import { More } from '../components/coming/More.tsx';
import { Failure, Loaded } from '../components/coming/states.tsx';
import { Works } from '../components/focus/Works.tsx';
import { useSending } from '../components/sending/useSending.ts';
import { Moment } from '../components/told/Moment.tsx';
import { Opens } from '../forms/Opens.tsx';
import { words } from '../words.ts';

const AT_ONCE = 20;

function Line({ coach, onRestored }: { readonly coach: Coach; readonly onRestored: () => void }) {
  const say = words.forms;
  const { busy, problem, send } = useSending();
  const restore = async () => {
    if (await send(async () => call(`/coaches/${coach.id}/restoration`, { method: 'POST' }))) onRestored();
  };
  return (
    <li>
      <strong dir="auto">{coach.name}</strong>{' '}
      {coach.deletedAt !== undefined && (
        <span class="about">
          {say.deleted} <Moment at={coach.deletedAt} ago />
        </span>
      )}{' '}
      <button type="button" aria-disabled={busy} aria-label={say.restoreNamed(coach.name)} onClick={restore}>
        {say.restore}
      </button>
      {problem !== null && <Failure problem={problem} />}
    </li>
  );
}

function List({ onChange }: { readonly onChange: () => void }) {
  const list = usePages<Coach>('/coaches?state=deleted', AT_ONCE);
  const restored = () => {
    list.first.reload();
    onChange();
  };
  return (
    <>
      <Loaded load={list.first}>
        {() => (
          <Works items={list.items} none={words.forms.noneDeleted}>
            {(coach) => <Line key={coach.id} coach={coach} onRestored={restored} />}
          </Works>
        )}
      </Loaded>
      <More list={list} />
    </>
  );
}

/** For dealers: what was deleted lately, and the way back. */
export function DeletedCoaches({ onChange }: { readonly onChange: () => void }) {
  return (
    <Opens title={words.forms.deletedCoaches}>
      <List onChange={onChange} />
    </Opens>
  );
}
