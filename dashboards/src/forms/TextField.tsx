import { Field } from '../components/sending/Field.tsx';

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onInput: (value: string) => void;
  readonly hint?: string;
  readonly problem?: string | null;
  /** What a phone's keyboard should offer. */
  readonly inputMode?: 'text' | 'decimal' | 'numeric' | 'search';
  readonly lines?: number;
  readonly maxLength?: number;
}

/** A line, or some lines, of text with its label. */
export function TextField({
  label,
  value,
  onInput,
  hint,
  problem,
  inputMode,
  lines,
  maxLength,
}: TextFieldProps) {
  return (
    <Field label={label} hint={hint} problem={problem}>
      {(ids) =>
        lines === undefined ? (
          <input
            {...ids}
            type="text"
            inputMode={inputMode}
            autocomplete="off"
            dir="auto"
            maxLength={maxLength}
            value={value}
            onInput={(event) => onInput(event.currentTarget.value)}
          />
        ) : (
          <textarea
            {...ids}
            rows={lines}
            dir="auto"
            maxLength={maxLength}
            value={value}
            onInput={(event) => onInput(event.currentTarget.value)}
          />
        )
      }
    </Field>
  );
}
