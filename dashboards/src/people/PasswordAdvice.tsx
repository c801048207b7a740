import { useEffect, useState } from 'preact/hooks';
import { peopleWords } from '../words/people.ts';
import { SHORTEST_PASSWORD } from './shortestPassword.ts';

interface PasswordAdviceProps {
  readonly password: string;
  /** That it is to sign in with, where the page knows it. */
  readonly address: string | undefined;
}

/** Tells of a password that is guessed first, while it is typed. It hinders nobody from taking it. */
export function PasswordAdvice({ password, address }: PasswordAdviceProps) {
  const isCommon = useIsCommon(password);
  const isAddress = address !== undefined && password.toLowerCase() === address.trim().toLowerCase();
  const { common, ownAddress } = peopleWords.newPassword;
  const advice = isAddress ? ownAddress : isCommon ? common : null;
  return (
    <div role="status">
      {advice !== null && password.length >= SHORTEST_PASSWORD && <p class="hint">{advice}</p>}
    </div>
  );
}

/** False until the list of common ones is there, which is fetched once a password is long enough to stand in it. */
function useIsCommon(password: string): boolean {
  const [common, setCommon] = useState<string | null>(null);
  useEffect(() => {
    if (password.length < SHORTEST_PASSWORD) return;
    import('./commonPasswords.ts').then(
      ({ isCommonPassword }) => setCommon(isCommonPassword(password) ? password : null),
      // Without a network it cannot be sent either.
      () => setCommon(null),
    );
  }, [password]);
  return common === password;
}
