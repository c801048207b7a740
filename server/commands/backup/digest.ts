import { createHash } from 'node:crypto';
import type { TableDigest } from './format.ts';

const LINE_FEED = 0x0a;

/** Rows, bytes and SHA-256 of rows in COPY's text form, taken as they pass. */
export class RowDigest {
  readonly #hash = createHash('sha256');
  #rows = 0;
  #bytes = 0;

  /** Answers how many rows end in this piece: the text form escapes every line feed within a row. */
  take(piece: Buffer): number {
    this.#hash.update(piece);
    this.#bytes += piece.length;
    let ended = 0;
    for (let at = piece.indexOf(LINE_FEED); at >= 0; at = piece.indexOf(LINE_FEED, at + 1)) ended++;
    this.#rows += ended;
    return ended;
  }

  end(): TableDigest {
    return { rows: this.#rows, bytes: this.#bytes, sha256: this.#hash.digest('hex') };
  }
}

/** What differs between two digests of one table, in words; null where they are the same. */
export function differenceOf(table: string, wanted: TableDigest, found: TableDigest): string | null {
  if (wanted.rows !== found.rows) return `${table} has ${found.rows} rows and should have ${wanted.rows}`;
  if (wanted.bytes !== found.bytes || wanted.sha256 !== found.sha256)
    return `the rows of ${table} are not those that were written`;
  return null;
}
