import { NewPassword } from '../people/NewPassword.tsx';
import { peopleWords } from '../words/people.ts';

/** Behind an invitation. */
export function JoinPage() {
  const { hint, known } = peopleWords.newPassword;
  return <NewPassword say={peopleWords.join} hint={`${hint} ${known}`} path="/invitations" />;
}
