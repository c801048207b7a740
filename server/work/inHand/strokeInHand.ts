import { parse, stringify } from 'uuid';

/** What a stroke that held up the analysis before is answered with. */
class HeldUp extends Error {
  constructor() {
    super('It held up the analysis before.');
    this.name = 'HeldUp';
  }
}

const [COUNT_BYTES, ID_BYTES] = [4, 16];

/**
 * Which stroke the analysis has in hand at this moment, in memory that two threads share: one that hangs, or died for
 * want of memory, could not say so any more. Strokes that are known for that are not taken in hand again.
 */
export class StrokeInHand {
  readonly memory: SharedArrayBuffer;
  /** Odd while one is in hand. */
  readonly #count: Int32Array;
  readonly #id: Uint8Array;
  readonly #heldUp: ReadonlySet<string>;

  constructor(
    memory: SharedArrayBuffer = new SharedArrayBuffer(COUNT_BYTES + ID_BYTES),
    heldUp: Iterable<string> = [],
  ) {
    this.memory = memory;
    this.#count = new Int32Array(memory, 0, 1);
    this.#id = new Uint8Array(memory, COUNT_BYTES);
    this.#heldUp = new Set(heldUp);
  }

  /** Does work on one stroke, without a pause. Throws `HeldUp` where that held it up before. */
  holding<Result>(strokeId: string, work: () => Result): Result {
    if (this.#heldUp.has(strokeId)) throw new HeldUp();
    this.#id.set(parse(strokeId));
    Atomics.add(this.#count, 0, 1);
    try {
      return work();
    } finally {
      Atomics.add(this.#count, 0, 1);
    }
  }

  /** Read by the other thread. `count` is another with each stroke. */
  read(): { readonly strokeId: string; readonly count: number } | null {
    const count = Atomics.load(this.#count, 0);
    return count % 2 === 0 ? null : { strokeId: stringify(this.#id), count };
  }
}
