import { parseTimestamp } from '../timestamp.ts';
import { readNumberCell } from './cells.ts';

/** A time cell: seconds on a scale of its own, and since 1970 where the cell says so much. */
export interface TimeCell {
  readonly seconds: number;
  readonly form: 'number' | 'clock' | 'date';
  /** Seconds are counted from 1970 in UTC. */
  readonly absolute: boolean;
}

const CLOCK = /^(\d{1,2}):(\d{2}):(\d{2}(?:[.,]\d{1,9})?)$/;
const DATE_AND_TIME = /^(\d{4}-\d{2}-\d{2})[Tt ](\d{2}:\d{2}:\d{2})(?:[.,](\d{1,9}))?(Z|z|[+-]\d{2}:\d{2})?$/;
const LONGEST = 40;
/** A count of seconds so large is the time of day of a year after 2001, not a recording's length. */
const FIRST_EPOCH_S = 1e9;
const FIRST_EPOCH_MS = 1e12;
/** Either way of 1970: beyond it there is no calendar. */
const LAST_S = 8.64e12;

/** Reads one cell of the time column, whose numbers are `unitS` seconds each; null where it is no time. */
export function readTimeCell(cell: string, unitS: number): TimeCell | null {
  const text = cell.trim();
  if (text.length === 0 || text.length > LONGEST) return null;
  const number = readNumberCell(text);
  if (number !== null) return Number.isNaN(number) ? null : ofNumber(number, unitS);
  const clock = CLOCK.exec(text);
  if (clock !== null) {
    const [hour, minute, second] = clock.slice(1).map((part) => Number(part.replace(',', '.')));
    if (hour > 23 || minute > 59 || second >= 61) return null;
    return { seconds: hour * 3600 + minute * 60 + second, form: 'clock', absolute: false };
  }
  const date = DATE_AND_TIME.exec(text);
  if (date === null) return null;
  const [, day, time, fraction, zone] = date;
  const ms = parseTimestamp(`${day}T${time}${zone ?? 'Z'}`);
  if (ms === null) return null;
  return { seconds: ms / 1000 + Number(`0.${fraction ?? 0}`), form: 'date', absolute: zone !== undefined };
}

function ofNumber(number: number, unitS: number): TimeCell | null {
  // A column that names no unit and counts so far counts milliseconds.
  const unit = unitS === 1 && number >= FIRST_EPOCH_MS ? 0.001 : unitS;
  // Dividing by a whole number keeps the decimals that multiplying by 0.001 would spoil.
  const seconds = unit === 1 ? number : number / Math.round(1 / unit);
  if (Math.abs(seconds) > LAST_S) return null;
  return { seconds, form: 'number', absolute: seconds >= FIRST_EPOCH_S };
}
