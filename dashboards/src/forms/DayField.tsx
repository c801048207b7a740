import { Field } from '../components/sending/Field.tsx';

interface DayFieldProps {
  readonly label: string;
  readonly hint?: string;
  /** `2026-05-02`, or empty. */
  readonly value: string;
  readonly onInput: (day: string) => void;
  readonly problem?: string | null;
}

/** A day of the calendar. */
export function DayField({ label, hint, value, onInput, problem }: DayFieldProps) {
  return (
    <Field label={label} hint={hint} problem={problem}>
      {(ids) => (
        <input {...ids} type="date" value={value} onInput={(event) => onInput(event.currentTarget.value)} />
      )}
    </Field>
  );
}
