import { StrokeInHand } from './strokeInHand.ts';

/** Work between two looks at other work: a request waits no longer than this for its turn. */
const LONGEST_MS = 8;

/** The service is going down: what was under way is left, and will be found unfinished at the next start. */
export class WorkStopped extends Error {
  constructor() {
    super('The work was stopped.');
    this.name = 'WorkStopped';
  }
}

/** Lets requests have their turn within long work on the same thread, and ends the work when it is to stop. */
export class Turns {
  readonly hand: StrokeInHand;
  readonly #stopping: AbortSignal;
  #since = performance.now();

  constructor(stopping: AbortSignal, hand: StrokeInHand = new StrokeInHand()) {
    this.#stopping = stopping;
    this.hand = hand;
  }

  /** Call it between two pieces. Throws `WorkStopped`. */
  async next(): Promise<void> {
    if (this.#stopping.aborted) throw new WorkStopped();
    if (performance.now() - this.#since < LONGEST_MS) return;
    await new Promise((resolve) => setImmediate(resolve));
    this.#since = performance.now();
  }
}
