import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Coach } from '../api/types.ts';
import { words } from '../words.ts';
import { InlineForm } from './InlineForm.tsx';
import { ModelField } from './ModelField.tsx';
import { fieldOf, isWithin, typedNumber } from './numbers.ts';
import { CloseContext } from './Opens.tsx';
import { TextField } from './TextField.tsx';
import { useForm } from './useForm.ts';

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
  const set = (name: keyof typeof typed) => (value: string) =>
    setTyped((held) => ({ ...held, [name]: value }));
  const year = typedNumber(typed.year);
  const form = useForm<keyof typeof typed>({
    wrong: {
      name: typed.name.trim() === '' ? say.nameMissing : null,
      model: null,
      year: year === null || isWithin(year, 1900, 2100, 'whole') ? null : say.yearWrong,
      notes: null,
    },
    send: async (idempotencyKey) => {
      const body = { name: typed.name.trim(), model: orNull(typed.model), year, notes: orNull(typed.notes) };
      const done =
        coach === null
          ? await call<Coach>('/coaches', { method: 'POST', body, idempotencyKey })
          : await call<Coach>(`/coaches/${coach.id}`, { method: 'PATCH', body });
      close();
      onDone(done);
    },
  });
  return (
    <InlineForm form={form} action={coach === null ? say.addCoach : say.save} busy={say.saving}>
      <TextField
        label={say.coachName}
        hint={say.coachNameHint}
        value={typed.name}
        onInput={set('name')}
        maxLength={300}
        problem={form.problemOf('name')}
      />
      <ModelField value={typed.model} onInput={set('model')} problem={form.problemOf('model')} />
      <TextField
        label={say.year}
        inputMode="numeric"
        value={typed.year}
        onInput={set('year')}
        problem={form.problemOf('year')}
      />
      <TextField
        label={say.notes}
        lines={2}
        value={typed.notes}
        onInput={set('notes')}
        maxLength={10_000}
        problem={form.problemOf('notes')}
      />
    </InlineForm>
  );
}
