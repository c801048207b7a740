import { Field } from '../components/sending/Field.tsx';

export interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly onInput: (value: string) => void;
  readonly hint?: string;
  readonly problem?: string | null;
}

/** The address that somebody signs in with, as browsers fill it in. */
export function EmailField({ label, value, onInput, hint, problem }: FieldProps) {
  return (
    <Field label={label} hint={hint} problem={problem}>
      {(ids) => (
        <input
          {...ids}
          type="email"
          name="email"
          autocomplete="username"
          value={value}
          onInput={(event) => onInput(event.currentTarget.value)}
        />
      )}
    </Field>
  );
}

interface PasswordFieldProps extends FieldProps {
  /** Tells a browser whether to fill it in or to offer one. */
  readonly kind: 'current' | 'new';
  /** Whether it can be read as it is typed. */
  readonly shown?: boolean;
}

export function PasswordField({
  label,
  value,
  onInput,
  hint,
  problem,
  kind,
  shown = false,
}: PasswordFieldProps) {
  return (
    <Field label={label} hint={hint} problem={problem}>
      {(ids) => (
        <input
          {...ids}
          {...(shown ? { type: 'text' as const } : { type: 'password' as const })}
          spellcheck={false}
          autocapitalize="off"
          name={kind === 'new' ? 'new-password' : 'password'}
          autocomplete={`${kind}-password`}
          value={value}
          onInput={(event) => onInput(event.currentTarget.value)}
        />
      )}
    </Field>
  );
}
