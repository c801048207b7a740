import pLimit from 'p-limit';
import { tooMuchAtOnce } from '../problems.ts';

/** Whoever waited longer is told to come again, well before the time for an answer is over. */
const MOST_WAIT_MS = 20_000;

/**
 * Lets work that takes the processor for long be done in turn, first come first served: those that wait hold no
 * connection, and are told to come again where it takes too long.
 */
export class PatientTurns {
  readonly #turns: ReturnType<typeof pLimit>;
  readonly #mostWaitMs: number;

  constructor(atOnce: number, mostWaitMs = MOST_WAIT_MS) {
    this.#turns = pLimit(atOnce);
    this.#mostWaitMs = mostWaitMs;
  }

  /** Under way and waiting. */
  get taken(): number {
    return this.#turns.activeCount + this.#turns.pendingCount;
  }

  /** Throws the 429 problem where its turn does not come in time. */
  run<Result>(work: () => Promise<Result>): Promise<Result> {
    const askedAtMs = performance.now();
    return this.#turns(async () => {
      if (performance.now() - askedAtMs > this.#mostWaitMs) throw tooMuchAtOnce();
      return work();
    });
  }
}
