import { Readable } from 'node:stream';

const PIECE_BYTES = 64 * 1024;

/** Bytes that are handed out piece by piece, as they are read; `stalled` is called when nobody reads on for so long. */
export class InPieces extends Readable {
  readonly #bytes: Buffer;
  readonly #stall: NodeJS.Timeout;
  #from = 0;

  constructor(bytes: Buffer, stallMs: number, stalled: () => void) {
    super({ highWaterMark: PIECE_BYTES });
    this.#bytes = bytes;
    this.#stall = setTimeout(stalled, stallMs);
  }

  override _read(): void {
    this.#stall.refresh();
    if (this.#from >= this.#bytes.length) {
      this.push(null);
      return;
    }
    this.push(this.#bytes.subarray(this.#from, this.#from + PIECE_BYTES));
    this.#from += PIECE_BYTES;
  }

  override _destroy(error: Error | null, done: (error?: Error | null) => void): void {
    clearTimeout(this.#stall);
    done(error);
  }
}
