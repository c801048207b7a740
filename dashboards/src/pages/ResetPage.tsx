import { NewPassword } from '../people/NewPassword.tsx';
import { peopleWords } from '../words/people.ts';

/** Behind the mailed link for whoever forgot its password. */
export function ResetPage() {
  return <NewPassword say={peopleWords.reset} hint={peopleWords.newPassword.hint} path="/password-resets" />;
}
