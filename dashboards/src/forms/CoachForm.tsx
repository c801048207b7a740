import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Coach } from '../api/types.ts';
import { Failure } from '../components/states.tsx';
import { useFirstProblem } from '../components/useFirstProblem.ts';
import { useSending } from '../components/useSending.ts';
import { words } from '../words.ts';
import { fieldOf, typedNumber } from './numbers.ts';
import { CloseContext } from './Opens.tsx';
import { TextField } from './TextField.tsx';

interface CoachFormProps {
  /** The coach to change; null for a new one. */
  readonly coach: Coach | null;
  readonly onDone: (coach: Coach) => void;
}

const orNull = (text: string): string | null => (text.trim() === '' ? null : text.trim());

/** Makes a coach, or changes one. */
export function CoachForm({ coach, onDone }: CoachFormProps) {
  const say = words.forms;
  const close = useContext(CloseContext);
  const [typed, setTyped] = useState({
    name: coach?.name ?? '',
    model: coach?.model ?? '',
    year: fieldOf(coach?.year ?? null),
    notes: coach?.notes ?? '',
  });
  const [tries, setTries] = useState(0);
  const form = useFirstProblem(tries);
  const { busy, problem, fieldProblem, send } = useSending();
  const set = (name: keyof typeof typed) => (value: string) =>
    setTyped((held) => ({ ...held, [name]: value }));
  const year = typedNumber(typed.year);
  const wrong = {
    name: typed.name.trim() === '' ? say.nameMissing : null,
    year: Number.isNaN(year) ? say.noNumber : null,
  };
  const submit = async (event: Event) => {
    event.preventDefault();
    setTries(tries + 1);
    if (wrong.name !== null || wrong.year !== null) return;
    const body = { name: typed.name.trim(), model: orNull(typed.model), year, notes: orNull(typed.notes) };
    let done: Coach | null = null;
    const sent = await send(async (idempotencyKey) => {
      done =
        coach === null
          ? await call<Coach>('/coaches', { method: 'POST', body, idempotencyKey })
          : await call<Coach>(`/coaches/${coach.id}`, { method: 'PATCH', body });
    });
    if (!sent || done === null) return;
    close();
    onDone(done);
  };
  const tried = tries > 0;
  return (
    <form ref={form} class="inline-form" onSubmit={submit} noValidate>
      {problem !== null && <Failure problem={problem} />}
      <TextField
        label={say.coachName}
        hint={say.coachNameHint}
        value={typed.name}
        onInput={set('name')}
        maxLength={300}
        problem={(tried && wrong.name) || fieldProblem('/name')}
      />
      <TextField
        label={say.model}
        hint={say.modelHint}
        value={typed.model}
        onInput={set('model')}
        maxLength={300}
        problem={fieldProblem('/model')}
      />
      <TextField
        label={say.year}
        inputMode="numeric"
        value={typed.year}
        onInput={set('year')}
        problem={(tried && wrong.year) || fieldProblem('/year')}
      />
      <TextField
        label={say.notes}
        lines={2}
        value={typed.notes}
        onInput={set('notes')}
        maxLength={10_000}
        problem={fieldProblem('/notes')}
      />
      <button type="submit" class="main-action" disabled={busy}>
        {busy ? say.saving : coach === null ? say.addCoach : say.save}
      </button>
    </form>
  );
}
