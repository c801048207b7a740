import { useEffect, useState } from 'preact/hooks';
import { asProblem, call } from '../api/client.ts';

/** Whether the link with this key was used or ran out, so that nobody chooses a password for nothing. False until that is known. */
export function useLinkOver(path: string, key: string): boolean {
  const [over, setOver] = useState<string | null>(null);
  useEffect(() => {
    if (key === '') return;
    call(`${path}/${encodeURIComponent(key)}`).catch((error: unknown) => {
      // Of anything else the form itself tells once it is sent.
      if (asProblem(error).status === 404) setOver(key);
    });
  }, [path, key]);
  return over === key;
}
