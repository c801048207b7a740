import { NewPassword } from '../people/NewPassword.tsx';
import { words } from '../words.ts';

/** Behind an invitation. */
export function JoinPage() {
  const { hint, known } = words.newPassword;
  return <NewPassword say={words.join} hint={`${hint} ${known}`} path="/invitations" />;
}
