import { BackOff, retryAfterS } from './backOff.ts';
import { type BodyForm, bodyOf } from './bodies.ts';
import type { OutgoingStroke } from './outgoingStroke.ts';
import type { Spool } from './spool.ts';

/** The service does not know this token: no other try will do. */
export class TokenRefused extends Error {
  override readonly name = 'TokenRefused';
}

export interface Sending {
  readonly url: string;
  readonly token: string;
  readonly spool: Spool;
  readonly form: BodyForm;
  readonly mostWaitMs: number;
  readonly stopping: AbortSignal;
  readonly say: (line: string) => void;
}

/** What became of the strokes that were in the spool. */
export interface Tally {
  stored: number;
  refused: number;
}

const MOST_TOGETHER = 100;
const ANSWER_WITHIN_MS = 60_000;
const TOO_SLOW = 408;
const TOO_MANY = 429;

interface Result {
  readonly key: string | null;
  readonly outcome: 'stored' | 'duplicate' | 'rejected';
  readonly problem?: { readonly detail: string };
}

/**
 * Sends what lies in the spool, oldest first, until it is empty: a stroke leaves it once the service said that it is
 * stored, or refused it for good. Throws `TokenRefused`, and when it is told to stop.
 */
export async function forward(sending: Sending): Promise<Tally> {
  const { spool, say, stopping, mostWaitMs } = sending;
  const tally: Tally = { stored: 0, refused: 0 };
  const backOff = new BackOff(mostWaitMs, stopping);
  let together = MOST_TOGETHER;
  for (;;) {
    stopping.throwIfAborted();
    const strokes = await spool.oldest(together);
    if (strokes.length === 0) return tally;
    const answer = await post(sending, strokes);
    if (answer === null || [TOO_SLOW, TOO_MANY].includes(answer.status) || answer.status >= 500) {
      say(answer === null ? 'No answer.' : `The service answered ${answer.status}.`);
      // The line may be too slow for so many.
      if (answer === null || answer.status === TOO_SLOW) together = Math.ceil(strokes.length / 2);
      await backOff.wait(answer?.retryAfterS);
      continue;
    }
    if (answer.status === 401) throw new TokenRefused('The service does not know this token.');
    backOff.reset();
    const isWhole = answer.status !== 200;
    if (isWhole && strokes.length > 1) {
      // Something in it is at fault for all: find out which by sending less together.
      together = Math.ceil(strokes.length / 2);
      continue;
    }
    together = MOST_TOGETHER;
    await settle(sending, strokes, answer.results, tally);
  }
}

interface Answer {
  readonly status: number;
  readonly retryAfterS: number;
  /** Empty unless the status is 200. */
  readonly results: readonly Result[];
}

/** Null where there was no answer, or not all of it. */
async function post(
  { url, token, form, stopping }: Sending,
  strokes: readonly OutgoingStroke[],
): Promise<Answer | null> {
  const { headers, body } = bodyOf(strokes, form);
  const signal = AbortSignal.any([stopping, AbortSignal.timeout(ANSWER_WITHIN_MS)]);
  try {
    const answer = await fetch(`${url}/api/v1/strokes`, {
      method: 'POST',
      headers: { ...headers, authorization: `Bearer ${token}` },
      body,
      signal,
    });
    const retryAfter = retryAfterS(answer.headers.get('retry-after'));
    const text = await answer.text();
    // The service's own schema gives its answers their shape.
    const results = answer.status === 200 ? (JSON.parse(text) as { results: Result[] }).results : [];
    return { status: answer.status, retryAfterS: retryAfter, results };
  } catch {
    stopping.throwIfAborted();
    return null;
  }
}

async function settle(
  { spool, say }: Sending,
  strokes: readonly OutgoingStroke[],
  results: readonly Result[],
  tally: Tally,
): Promise<void> {
  for (const [i, stroke] of strokes.entries()) {
    const result = results[i];
    if (result?.outcome === 'stored' || result?.outcome === 'duplicate') {
      await spool.forget(stroke);
      tally.stored++;
      say(`${result.outcome} ${stroke.key}`);
    } else {
      await spool.setAside(stroke);
      tally.refused++;
      say(`refused ${stroke.key}: ${result?.problem?.detail ?? 'the service cannot read it.'}`);
    }
  }
}
