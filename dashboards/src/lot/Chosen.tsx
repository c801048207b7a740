import { useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import { Failure } from '../components/states.tsx';
import { useSending } from '../components/useSending.ts';
import { TextField } from '../forms/TextField.tsx';
import { words } from '../words.ts';
import { saveCsv } from './saveCsv.ts';

interface ChosenProps {
  readonly coachIds: readonly string[];
  readonly since: string | null;
  readonly onNone: () => void;
  readonly onChange: () => void;
}

/** What can be done with several coaches at once. */
export function Chosen({ coachIds, since, onNone, onChange }: ChosenProps) {
  const say = words.lot;
  const [note, setNote] = useState('');
  const [done, setDone] = useState<number | null>(null);
  const acknowledging = useSending();
  const saving = useSending();
  const acknowledge = async (event: Event) => {
    event.preventDefault();
    const body = { coaches: coachIds, ...(note.trim() === '' ? {} : { note: note.trim() }) };
    const sent = await acknowledging.send(async () => {
      const answer = await call<{ acknowledged: readonly string[] }>('/acknowledgements', {
        method: 'POST',
        body,
      });
      setDone(answer.acknowledged.length);
    });
    if (!sent) return;
    setNote('');
    onChange();
  };
  const asked = new URLSearchParams({ coaches: coachIds.join(',') });
  if (since !== null) asked.set('since', since);
  return (
    <section class="chosen" aria-label={say.chosen(coachIds.length)}>
      <p>
        <strong>{say.chosen(coachIds.length)}</strong>{' '}
        <button type="button" class="quiet" onClick={onNone}>
          {say.unchoose}
        </button>
      </p>
      {acknowledging.problem !== null && <Failure problem={acknowledging.problem} />}
      {saving.problem !== null && <Failure problem={saving.problem} />}
      <form onSubmit={acknowledge}>
        <TextField label={say.note} value={note} onInput={setNote} maxLength={10_000} />
        <div class="actions">
          <button type="submit" class="main-action" disabled={acknowledging.busy}>
            {acknowledging.busy ? say.acknowledging : say.acknowledge}
          </button>
          <button
            type="button"
            disabled={saving.busy}
            onClick={() => void saving.send(() => saveCsv(`/overview?${asked}`))}
          >
            {saving.busy ? say.saving : say.csvChosen}
          </button>
        </div>
      </form>
      <p role="status">{done !== null && say.acknowledged(done)}</p>
    </section>
  );
}
