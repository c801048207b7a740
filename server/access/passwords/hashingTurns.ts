import pLimit from 'p-limit';
import { tooMuchAtOnce } from '../../problems.ts';

/**
 * Hashing takes a core and 19 MiB each: so many at once leave threads for files, names and compression. So many more
 * may wait, which is some ten seconds' worth; whoever comes then is told to come again.
 */
const AT_ONCE = 2;
const MOST_WAITING = 1000;

/**
 * Lets passwords be hashed in turn, first come first served: however many sign in at once, others are served meanwhile.
 * Never to be waited for in a transaction: those whose turn it is may wait for its connection.
 */
export class HashingTurns {
  readonly #turns = pLimit(AT_ONCE);

  /** Throws the 429 problem where too many wait. */
  async run<Result>(work: () => Promise<Result>): Promise<Result> {
    if (this.#turns.pendingCount >= MOST_WAITING) throw tooMuchAtOnce();
    return this.#turns(work);
  }
}
