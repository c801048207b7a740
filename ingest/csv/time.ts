import { parseTimestamp } from '../timestamp.ts';
import { readNumberCell, readQuantityCell } from './cells.ts';

/** A time cell: seconds on a scale of its own, and since 1970 where the cell says so much. */
export interface TimeCell {
  readonly seconds: number;
  readonly form: 'number' | 'clock' | 'date';
  /** Seconds are counted from 1970 in UTC. */
  readonly absolute: boolean;
  /** Of a clock: how many seconds it counts before it begins anew; 0 of anything else. */
  readonly turnS: number;
  /** Of a clock: the day beside it, as it is written; which comes first, day or month, is not told by it. Else empty. */
  readonly day: string;
}

const CLOCK = /^(\d{1,2}):(\d{2}):(\d{2}(?:[.,]\d{1,9})?)(?:\s*([ap])\.?m\.?)?$/i;
/** As spreadsheets write a time with decimals: minutes of an hour that is left out. */
const MINUTES = /^(\d{1,2}):(\d{2}[.,]\d{1,9})$/;
const DAY_AND_REST = /^(\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4})(?:,?\s+(\S.*))?$/;
const DATE_AND_TIME = /^(\d{4}-\d{2}-\d{2})[Tt ](\d{2}:\d{2}:\d{2})(?:[.,](\d{1,9}))?(Z|z|[+-]\d{2}:\d{2})?$/;
const LONGEST = 40;
const DAY_S = 86_400;
const HOUR_S = 3600;
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
  const [, day, time, fraction, zone] = DATE_AND_TIME.exec(text) ?? [];
  if (day === undefined) return ofClock(text) ?? ofQuantity(text);
  const ms = parseTimestamp(`${day}T${time}${zone ?? 'Z'}`);
  if (ms === null) return null;
  const seconds = ms / 1000 + Number(`0.${fraction ?? 0}`);
  return { seconds, form: 'date', absolute: zone !== undefined, turnS: 0, day: '' };
}

/** Whether a cell says a day and no time of it. */
export function isDayAlone(cell: string): boolean {
  const [whole, , rest] = DAY_AND_REST.exec(cell.trim().slice(0, LONGEST)) ?? [];
  return whole !== undefined && rest === undefined;
}

function ofClock(text: string): TimeCell | null {
  const [, day = '', rest = day === '' ? text : ''] = DAY_AND_REST.exec(text) ?? [];
  const clock = { form: 'clock', absolute: false, day } as const;
  const [, hours, minutes, seconds, half] = CLOCK.exec(rest) ?? [];
  if (hours !== undefined) {
    const hour = half === undefined ? Number(hours) : hourOfHalf(Number(hours), half);
    if (hour === null || hour > 23) return null;
    const inHour = secondsInHour(minutes, seconds);
    return inHour === null ? null : { ...clock, seconds: hour * HOUR_S + inHour, turnS: DAY_S };
  }
  const [, minute, second] = MINUTES.exec(rest) ?? [];
  const inHour = minute === undefined ? null : secondsInHour(minute, second);
  return inHour === null ? null : { ...clock, seconds: inHour, turnS: HOUR_S };
}

/** Twelve begins either half of the day. */
function hourOfHalf(hour: number, half: string): number | null {
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
}

function secondsInHour(minutes: string, seconds: string): number | null {
  const [minute, second] = [Number(minutes), Number(seconds.replace(',', '.'))];
  return minute > 59 || second >= 61 ? null : minute * 60 + second;
}

/** `0.05 s`: a cell that says its own unit. */
function ofQuantity(text: string): TimeCell | null {
  const said = readQuantityCell(text);
  switch (said?.unit) {
    case 's':
      return ofNumber(said.number, 1);
    case 'ms':
      return ofNumber(said.number, 1e-3);
    case 'us':
      return ofNumber(said.number, 1e-6);
    default:
      return null;
  }
}

function ofNumber(number: number, unitS: number): TimeCell | null {
  // A column that names no unit and counts so far counts milliseconds.
  const unit = unitS === 1 && number >= FIRST_EPOCH_MS ? 0.001 : unitS;
  // Dividing by a whole number keeps the decimals that multiplying by 0.001 would spoil.
  const seconds = unit === 1 ? number : number / Math.round(1 / unit);
  if (Math.abs(seconds) > LAST_S) return null;
  return { seconds, form: 'number', absolute: seconds >= FIRST_EPOCH_S, turnS: 0, day: '' };
}
