import type { SampleRange } from '../../analysis/split/sampleRange.ts';
import { splitRecording } from '../../analysis/split/splitRecording.ts';
import { DecodeError } from '../decodeError.ts';
import type { SentQuery } from '../forms/sentForm.ts';
import { MAX_SAMPLES } from '../limits.ts';
import type { SideNaming } from './columns.ts';
import { readRoles } from './roles.ts';
import { type RecordedTable, readTable } from './table.ts';

/** A table with its clock, and where it is cut into strokes. */
export interface Recording {
  readonly table: RecordedTable;
  /** Null where the table has times of its own. */
  readonly rateHz: number | null;
  /** Seconds from the first row, one for each. */
  readonly timesS: Float64Array;
  readonly ranges: readonly SampleRange[];
  /** Whether it is that of a motor which is held in place between its strokes: then the sign tells no direction. */
  readonly isHeld: boolean;
  /** False where no current stands clear of rest: the whole is taken for one stroke all the same. */
  readonly flows: boolean;
}

const MICRO = 1e6;
/** A room with one motor usually calls its side so. */
const ONLY_SIDE = 'main';
const DECIMAL = /^\d{1,6}(?:[.,]\d{1,9})?$/;

/**
 * Reads a CSV recording and cuts it; `text` begins with its titles (`passPreamble`). Throws `DecodeError` with line and
 * column, or the name of what must be said.
 */
export function readRecording(text: string, query: SentQuery): Recording {
  const table = readTable(text, {
    naming: namingOf(query),
    timed: query.rateHz === undefined,
    columns: query.columns === undefined ? null : readRoles(query.columns),
  });
  const rateHz = rateOf(query, table);
  const timesS = secondsFromFirst(table, rateHz);
  return { table, rateHz, timesS, ...cut(table, timesS) };
}

/** A side that the sender says goes before what is known of the room. */
export function namingOf({ side, roomSides = [] }: SentQuery): SideNaming {
  if (side !== undefined) return { side, onlySide: null, roomSides };
  const onlySide = roomSides.length === 1 ? roomSides[0] : null;
  return { side: onlySide ?? ONLY_SIDE, onlySide, roomSides };
}

function rateOf({ rateHz }: SentQuery, table: RecordedTable): number | null {
  if (rateHz !== undefined) {
    const perSecond = DECIMAL.test(rateHz) ? Number(rateHz.replace(',', '.')) : 0;
    if (perSecond > 0) return perSecond;
    throw DecodeError.at('/rateHz', 'rateHz must be a number of samples a second.');
  }
  if (table.time !== null) return null;
  throw DecodeError.at('/rateHz', 'There is no column of times: say rateHz= in the query.');
}

function secondsFromFirst(table: RecordedTable, rateHz: number | null): Float64Array {
  if (table.time === null || rateHz !== null) {
    return Float64Array.from(table.lines, (_, i) => i / (rateHz ?? 1));
  }
  const { seconds } = table.time;
  return Float64Array.from(seconds, (time) => roundSeconds(time - seconds[0]));
}

/** Whole when there is but one stroke in it, and it is no longer than a stroke may be. */
function cut(table: RecordedTable, timesS: Float64Array): Pick<Recording, 'ranges' | 'isHeld' | 'flows'> {
  const whole = { from: 0, to: timesS.length };
  const { ranges, isHeld } = splitRecording(
    timesS,
    table.sides.map(({ values }) => Float64Array.from(values)),
  );
  const flows = ranges.length > 0;
  const isOne = !flows || (ranges.length === 1 && timesS.length <= MAX_SAMPLES);
  return { ranges: isOne ? [whole] : ranges, isHeld, flows };
}

/** To the microsecond: decimals that a subtraction spoiled come back. */
export function roundSeconds(seconds: number): number {
  return Math.round(seconds * MICRO) / MICRO;
}
