import { tooMuchAtOnce } from '../limits/tooMuch.ts';

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
  #underWay = 0;
  readonly #waiting: (() => void)[] = [];

  /** Throws the 429 problem where too many wait. */
  async run<Result>(work: () => Promise<Result>): Promise<Result> {
    await this.#begin();
    try {
      return await work();
    } finally {
      const next = this.#waiting.shift();
      // Handed on rather than given back: nobody who comes just now gets before those who wait.
      if (next === undefined) this.#underWay--;
      else next();
    }
  }

  async #begin(): Promise<void> {
    if (this.#underWay < AT_ONCE) {
      this.#underWay++;
      return;
    }
    if (this.#waiting.length >= MOST_WAITING) throw tooMuchAtOnce();
    await new Promise<void>((begin) => {
      this.#waiting.push(begin);
    });
  }
}
