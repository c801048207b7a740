import { CallProblem } from '../api/client.ts';
import { words } from '../words.ts';

/** Ends the mail of whoever a link was sent to. Mail programs post to the very same address, which is none of the API. */
export async function endMail(token: string): Promise<void> {
  const response = await fetch(`/unsubscribe/${encodeURIComponent(token)}`, { method: 'POST' }).catch(() => {
    throw new CallProblem(0, words.problems.network);
  });
  if (!response.ok) throw new CallProblem(response.status, words.problems.service);
}
