import { useState } from 'preact/hooks';
import { Tick } from '../components/sending/Tick.tsx';
import { type FieldProps, PasswordField } from '../forms/SignInFields.tsx';
import { words } from '../words.ts';
import { PasswordAdvice } from './PasswordAdvice.tsx';

interface NewPasswordFieldProps extends FieldProps {
  /** Of whom it will be, where that is known. */
  readonly address?: string;
}

/** A password that somebody chooses: it can be read over, in place of typing it twice. */
export function NewPasswordField({ address, ...field }: NewPasswordFieldProps) {
  const [shown, setShown] = useState(false);
  return (
    <>
      <PasswordField {...field} kind="new" shown={shown} />
      <PasswordAdvice password={field.value} address={address} />
      <div>
        <Tick label={words.signIn.show} on={shown} onChange={setShown} />
      </div>
    </>
  );
}
