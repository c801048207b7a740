import { useState } from 'preact/hooks';
import { Field } from '../components/sending/Field.tsx';
import { noticesWords } from '../words/notices.ts';

interface SilentDaysProps {
  readonly days: number | null;
  readonly onChange: (days: number | null) => void;
}

/** After how many days a silent logger is told of; empty: not at all. */
export function SilentDays({ days, onChange }: SilentDaysProps) {
  const say = noticesWords.notices;
  const [typed, setTyped] = useState(days === null ? '' : String(days));
  const wanted = typed.trim() === '' ? null : Number(typed);
  const isWrong = wanted !== null && !(Number.isInteger(wanted) && wanted >= 1 && wanted <= 365);
  return (
    <Field label={say.silent} hint={say.silentHint} problem={isWrong ? say.silentWrong : null}>
      {(ids) => (
        <input
          {...ids}
          type="text"
          inputMode="numeric"
          autocomplete="off"
          maxLength={3}
          value={typed}
          onInput={(event) => setTyped(event.currentTarget.value)}
          onChange={() => {
            if (!isWrong && wanted !== days) onChange(wanted);
          }}
        />
      )}
    </Field>
  );
}
