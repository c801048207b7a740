import { NewPassword } from '../people/NewPassword.tsx';
import { words } from '../words.ts';

/** Behind the mailed link for whoever forgot its password. */
export function ResetPage() {
  return <NewPassword say={words.reset} hint={words.newPassword.hint} path="/password-resets" />;
}
