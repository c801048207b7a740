import { isBeyond } from '../measurePlace.ts';

/**
 * What `OUTLINE` is made of: when, and the value as it is drawn, which is the adjusted one, or what was measured where
 * that is not known. Each look into a list costs as much as finding the row, so there is none too many.
 */
export const outlinePoint = (index: number): string =>
  `placed_at, coalesce(adjusted[${index}], value[${index}]) as shown, ${isBeyond(index)} as beyond`;

/**
 * SQL that hands over what points are chosen by, in their order, times as microseconds since 2000. Each in a string of
 * bytes for itself: put together for each point they take longer. In base64: the driver takes text, and reading bytes
 * from hexadecimal digits takes seven times as long.
 */
export const OUTLINE = `
  encode(string_agg(timestamptz_send(placed_at), ''), 'base64') as times,
  encode(string_agg(float8send(shown), ''), 'base64') as shown,
  encode(string_agg(timestamptz_send(placed_at), '') filter (where beyond), 'base64') as beyond`;
/** Of an int64 and of a float64. */
const BYTES = 8;

/** What `OUTLINE` answers; null where there is no such row. */
export interface OutlineRow {
  readonly times: string | null;
  readonly shown: string | null;
  readonly beyond: string | null;
}

/** The course of a trend without its particulars. Points are told by their place in order of time, from 0. */
export class TrendOutline {
  readonly count: number;
  readonly countBeyond: number;
  readonly #times: DataView;
  readonly #shown: DataView;
  readonly #beyond: DataView;

  constructor({ times, shown, beyond }: OutlineRow) {
    this.#times = bytesOf(times);
    this.#shown = bytesOf(shown);
    this.#beyond = bytesOf(beyond);
    this.count = this.#times.byteLength / BYTES;
    this.countBeyond = this.#beyond.byteLength / BYTES;
  }

  shown(point: number): number {
    return this.#shown.getFloat64(point * BYTES);
  }

  /** When the stroke was made, microseconds since 2000. */
  time(point: number): bigint {
    return this.#times.getBigInt64(point * BYTES);
  }

  /** When those were made that lie beyond the limits. */
  timesBeyond(): bigint[] {
    return Array.from({ length: this.countBeyond }, (_, place) => this.#beyond.getBigInt64(place * BYTES));
  }
}

function bytesOf(text: string | null): DataView {
  const { buffer, byteOffset, length } = Buffer.from(text ?? '', 'base64');
  return new DataView(buffer, byteOffset, length);
}
