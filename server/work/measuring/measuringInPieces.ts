import pLimit from 'p-limit';
import type { StrokeToMeasure } from './measureMessages.ts';
import type { MeasureThread } from './startMeasureThread.ts';

/** A stroke that comes alone waits for no more than the pieces that the thread has already: some ten milliseconds. */
const STROKES_A_PIECE = 8;
/** One that the thread has in hand, and one that it finds when it is done with it. */
const PIECES_AT_ONCE = 2;
/** So many strokes wait in all at most, a second's worth. */
const MOST_WAITING = 1024;

/** Lets a thread measure the strokes of those who catch up, many at a time, without keeping anybody else waiting. */
export class MeasuringInPieces {
  readonly #thread: MeasureThread;
  readonly #turns = pLimit(PIECES_AT_ONCE);
  #waiting = 0;

  constructor(thread: MeasureThread) {
    this.#thread = thread;
  }

  /** How many more may come now. */
  get room(): number {
    return Math.max(0, MOST_WAITING - this.#waiting);
  }

  /** In their order, as JSON text; null for each that the thread could not do. It never rejects. */
  async measure(strokes: readonly StrokeToMeasure[]): Promise<readonly (string | null)[]> {
    this.#waiting += strokes.length;
    const starts = Array.from(
      { length: Math.ceil(strokes.length / STROKES_A_PIECE) },
      (_, n) => n * STROKES_A_PIECE,
    );
    const pieces = await this.#turns.map(starts, (start) =>
      this.#measurePiece(strokes.slice(start, start + STROKES_A_PIECE)),
    );
    return pieces.flat();
  }

  async #measurePiece(piece: readonly StrokeToMeasure[]): Promise<readonly (string | null)[]> {
    const measured = this.#thread.isReady ? await this.#thread.measure(piece) : piece.map(() => null);
    this.#waiting -= piece.length;
    return measured;
  }
}
