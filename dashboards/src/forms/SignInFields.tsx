import { useState } from 'preact/hooks';
import { Field } from '../components/sending/Field.tsx';
import { Tick } from '../components/sending/Tick.tsx';
import { PasswordAdvice } from '../people/PasswordAdvice.tsx';
import { words } from '../words.ts';

interface FieldProps {
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
  /** Of whom a new one will be, where that is known. */
  readonly address?: string;
}

export function PasswordField({ label, value, onInput, hint, problem, kind, address }: PasswordFieldProps) {
  const [shown, setShown] = useState(false);
  const field = (
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
  if (kind === 'current') return field;
  // Whoever chooses a password can read it over, in place of typing it twice.
  return (
    <>
      {field}
      <PasswordAdvice password={value} address={address} />
      <div>
        <Tick label={words.signIn.show} on={shown} onChange={setShown} />
      </div>
    </>
  );
}
