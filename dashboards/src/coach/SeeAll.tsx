import { useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { CoachOverview, Page, Warning } from '../api/types.ts';
import { useMany } from '../api/useMany.ts';
import { Failure, Waiting } from '../components/coming/states.tsx';
import { useSending } from '../components/sending/useSending.ts';
import { toldHere } from '../format.ts';
import { Opens } from '../forms/Opens.tsx';
import { TextField } from '../forms/TextField.tsx';
import { words } from '../words.ts';

interface SeeAllProps {
  readonly coach: CoachOverview;
  readonly onDone: () => void;
}

/** Marks every open warning of a coach as seen in one go: what they say and their cautions are read first. */
export function SeeAll({ coach, onDone }: SeeAllProps) {
  const say = words.seeAll;
  const [count, setCount] = useState<number | null>(null);
  const open = coach.rooms.reduce((sum, room) => sum + room.openWarnings, 0);
  const done = (marked: number) => {
    setCount(marked);
    onDone();
  };
  return (
    <>
      {/* It says what was done, and must be there before it does. */}
      <p role="status">{count !== null && words.lot.acknowledged(count)}</p>
      {open > 0 && (
        <Opens title={say.title(open)}>
          <AllOfThem coach={coach} onDone={done} />
        </Opens>
      )}
    </>
  );
}

function AllOfThem({
  coach,
  onDone,
}: {
  readonly coach: CoachOverview;
  readonly onDone: (n: number) => void;
}) {
  const say = words.seeAll;
  const rooms = coach.rooms.filter((room) => room.openWarnings > 0);
  // One that opened since, or cleared, is read as well before all are said to be seen.
  const lists = useMany<Page<Warning>>(
    rooms.map(({ id }) => `/rooms/${id}/warnings?state=open&limit=500`),
    rooms.map(({ id, strokes, openWarnings }) => `${id}/${strokes}/${openWarnings}`).join(),
  );
  const warnings = lists.values.flatMap(({ items }) => items);
  const [note, setNote] = useState('');
  const { busy, problem, send } = useSending();
  const submit = async (event: Event) => {
    event.preventDefault();
    const said = note.trim() === '' ? {} : { note: note.trim() };
    const body = { warnings: warnings.map(({ id }) => id), ...said };
    await send(async (idempotencyKey) => {
      const { acknowledged } = await call<{ acknowledged: readonly string[] }>('/acknowledgements', {
        method: 'POST',
        body,
        idempotencyKey,
      });
      onDone(acknowledged.length);
    });
  };
  if (lists.problem !== null) return <Failure problem={lists.problem} retry={lists.reload} />;
  if (lists.values.length < rooms.length) return <Waiting />;
  return (
    <form class="inline-form" onSubmit={submit}>
      <p>{say.lead}</p>
      <ul class="works">
        {warnings.map((warning) => (
          <li key={warning.id}>
            <a href={`/rooms/${warning.roomId}`} dir="auto">
              {rooms.find(({ id }) => id === warning.roomId)?.name}
            </a>
            {words.joint}
            {toldHere(warning.headline)} <span class="about">{words.verdicts[warning.severity].word}</span>
          </li>
        ))}
      </ul>
      <div class="cautions">
        <h3>{words.warnings.never}</h3>
        <ul>
          {[...new Set(warnings.flatMap(({ cautions }) => cautions))].map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </div>
      {problem !== null && <Failure problem={problem} />}
      <TextField label={words.lot.note} value={note} onInput={setNote} maxLength={10_000} />
      <button type="submit" class="main-action" aria-disabled={busy}>
        {busy ? words.lot.acknowledging : say.submit(warnings.length)}
      </button>
    </form>
  );
}
