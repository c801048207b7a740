/**
 * What one logger may have at once in one process, over all its links together. It is much, since every coach of a lot may be
 * wired to one board, and a board that lost its links begins new ones before the old ones are dropped for their silence. Messages that wait for the database are bounded by their bytes, however many links bring them.
 */
export const MOST_OF_ONE_LOGGER = { links: 256, strokes: 256, bytes: 4 * 1024 * 1024 } as const;

/** A link, as far as it concerns what its logger has in all. */
interface OwnLink {
  /** Under way on it. */
  readonly strokes: number;
  /** Reads on only while the logger's share allows it. */
  holdBack(): void;
  close(code: number, reason: string): void;
}

/** The part of one logger in what this process does at once. */
export class LoggerShare {
  /** Those that are open, the oldest first. */
  readonly links = new Set<OwnLink>();
  #bytes = 0;

  /** Strokes under way. */
  get strokes(): number {
    let strokes = 0;
    for (const link of this.links) strokes += link.strokes;
    return strokes;
  }

  /** Whether none of its links is to be read from now. */
  get isFull(): boolean {
    return this.#bytes > MOST_OF_ONE_LOGGER.bytes;
  }

  /** Counts bytes that came, or, below zero, that were dealt with. */
  count(bytes: number): void {
    const wasFull = this.isFull;
    this.#bytes += bytes;
    if (wasFull !== this.isFull) for (const link of this.links) link.holdBack();
  }
}
