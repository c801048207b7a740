import { useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import { saveCsv } from '../api/saveCsv.ts';
import { Failure } from '../components/coming/states.tsx';
import { useSending } from '../components/sending/useSending.ts';
import { TextField } from '../forms/TextField.tsx';
import { words } from '../words.ts';

/** As many as one address, and one request, can name. */
const NAMED_AT_ONCE = 250;

function inParts(ids: readonly string[]): string[][] {
  const parts: string[][] = [];
  for (let i = 0; i < ids.length; i += NAMED_AT_ONCE) parts.push(ids.slice(i, i + NAMED_AT_ONCE));
  return parts;
}

function csvPath(ids: readonly string[], since: string | null): string {
  const asked = new URLSearchParams({ coaches: ids.join(',') });
  if (since !== null) asked.set('since', since);
  return `/overview?${asked}`;
}

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
    const said = note.trim() === '' ? {} : { note: note.trim() };
    const sent = await acknowledging.send(async () => {
      let count = 0;
      for (const coaches of inParts(coachIds)) {
        const { acknowledged } = await call<{ acknowledged: readonly string[] }>('/acknowledgements', {
          method: 'POST',
          body: { coaches, ...said },
        });
        count += acknowledged.length;
      }
      setDone(count);
    });
    if (!sent) return;
    setNote('');
    onChange();
  };
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
          <button type="submit" class="main-action" aria-disabled={acknowledging.busy}>
            {acknowledging.busy ? say.acknowledging : say.acknowledge}
          </button>
          <button
            type="button"
            aria-disabled={saving.busy}
            onClick={() =>
              void saving.send(() =>
                saveCsv(
                  inParts(coachIds).map((ids) => csvPath(ids, since)),
                  words.lot.fileName,
                ),
              )
            }
          >
            {saving.busy ? say.saving : say.csvChosen}
          </button>
        </div>
      </form>
      <p role="status">{done !== null && say.acknowledged(done)}</p>
    </section>
  );
}
