import type { SampleRange } from '../../analysis/split/sampleRange.ts';
import { directionBySign } from '../../analysis/stroke/read/direction.ts';
import type { Direction } from '../../analysis/trace.ts';
import { DecodeError } from '../decodeError.ts';
import type { Place, SentQuery, TranslatedForm } from '../forms/sentForm.ts';
import { parseTimestamp } from '../timestamp.ts';
import { passPreamble } from './passPreamble.ts';
import { type Recording, readRecording, roundSeconds } from './recording.ts';
import { lineName, linePointer } from './records.ts';
import type { NumberColumn, RecordedTable } from './table.ts';

/** One stroke on its way, and the rows that its samples came from. */
interface CutStroke {
  readonly stroke: object;
  readonly rows: readonly number[];
  readonly supplyRows: readonly number[];
}

/**
 * A CSV recording as strokes: one if there is one in it. Of several the first has the key that was said, the others
 * `<key>#2`, `<key>#3` and so on: a recording that is sent again when it has grown brings only what is new. Times are taken
 * from the first row on, which is the recording's start. What a meter writes above its table is passed over. Throws
 * `DecodeError` with line and column.
 */
export function strokesOfCsv(text: string, query: SentQuery): TranslatedForm {
  return strokesOfRecording(readRecording(passPreamble(text).text, query), query);
}

export function strokesOfRecording(recording: Recording, query: SentQuery): TranslatedForm {
  const { table, ranges } = recording;
  const directions = directionsOf(query, recording);
  const startedAtMs = startOf(query, table);
  const cuts = ranges.map((range, n) => {
    const own = { key: keyOf(query, n), roomId: query.roomId, direction: directions[n] };
    return strokeOf(recording, range, startedAtMs, own);
  });
  const several = cuts.length > 1;
  return {
    strokes: several ? cuts.map(({ stroke }) => stroke) : cuts[0].stroke,
    placeOf: (pointer) => {
      const [, first] = pointer.split('/');
      const inner = several ? pointer.slice(1 + (first ?? '').length) : pointer;
      return placeIn(inner, table, cuts[several ? Number(first ?? 0) : 0]);
    },
  };
}

function keyOf({ key }: SentQuery, n: number): string | undefined {
  return key === undefined || n === 0 ? key : `${key}#${n + 1}`;
}

/** What the query says, one for all or one for each; else the sign of the current must tell it. */
function directionsOf({ direction }: SentQuery, recording: Recording): (string | undefined)[] {
  const { table, ranges, timesS } = recording;
  if (direction !== undefined) {
    const said = direction.split(',').map((one) => one.trim());
    if (said.length === 1) return ranges.map(() => said[0]);
    if (said.length === ranges.length) return said;
    throw DecodeError.at('/direction', whyUnfit(said.length, ranges, timesS));
  }
  // Whether positive extends is the room's to say; here it only matters that the sign can be told. A sender is taken at its
  // signs, also where all are alike; a person, whose meter may know none, is asked (`directionsToShow`), and so is whoever
  // sends the record of a motor that draws current of one sign whichever way it moves.
  const told = recording.isHeld
    ? directionsToShow(table, ranges, 'extend')
    : directionsBySign(table, ranges, 'extend');
  const untold = told.indexOf(null);
  if (untold < 0) return ranges.map(() => undefined);
  throw DecodeError.at('/direction', whyUntold(untold, told));
}

const ASK = 'say direction=extend or direction=retract in the query';
const LISTED_STROKES = 12;

/** Why the direction of stroke `n` (from 0) is asked for, and how to say it. */
export function whyUntold(n: number, told: readonly (Direction | null)[]): string {
  if (told.length === 1) return `The sign of the current does not tell the direction: ${ASK}.`;
  const each = `${ASK}, or one for each of the ${told.length} strokes with commas: direction=extend,retract,…`;
  return told.every((direction) => direction === null)
    ? `The sign of the current does not tell the directions of the ${told.length} strokes: ${each}`
    : `The sign of the current does not tell the direction of stroke ${n + 1}: ${each}`;
}

/** Why so many directions do not fit the strokes of a recording. */
function whyUnfit(said: number, ranges: readonly SampleRange[], timesS: Float64Array): string {
  const begins = ranges.slice(0, LISTED_STROKES).map(({ from }) => timesS[from].toFixed(1));
  const more = ranges.length > LISTED_STROKES ? ' and so on' : '';
  const found = ranges.length === 1 ? 'one stroke was found' : `${ranges.length} strokes were found`;
  return `${said} directions are given, but ${found}, from ${begins.join(', ')}${more} seconds on. Say one for each, or one for all.`;
}

/** The direction of each stroke by the sign of its current; null where that does not tell. */
function directionsBySign(
  table: RecordedTable,
  ranges: readonly SampleRange[],
  positiveDirection: Direction,
): (Direction | null)[] {
  return ranges.map((range) => directionOf(table, range, positiveDirection));
}

/**
 * The same as it is shown to a person before anything is stored. Several of one sign tell nothing then: a room does not go out
 * twice running, but a meter that knows no sign, or one on a lead that is not reversed, reads all of them alike.
 */
export function directionsToShow(
  table: RecordedTable,
  ranges: readonly SampleRange[],
  positiveDirection: Direction,
): (Direction | null)[] {
  const told = directionsBySign(table, ranges, positiveDirection);
  const isBothWays = told.includes('extend') && told.includes('retract');
  return told.length === 1 || isBothWays ? told : told.map(() => null);
}

function directionOf(
  table: RecordedTable,
  { from, to }: SampleRange,
  positiveDirection: Direction,
): Direction | null {
  const sides = table.sides.map(({ name, values }) => ({
    side: name,
    timesS: new Float64Array(0),
    amps: Float64Array.from(values.slice(from, to)),
  }));
  return directionBySign({ sides }, { positiveDirection });
}

export function startOf({ startedAt }: SentQuery, table: RecordedTable): number {
  if (startedAt !== undefined) {
    const ms = parseTimestamp(startedAt);
    if (ms !== null) return ms;
    throw DecodeError.at('/startedAt', 'startedAt must be a time of RFC 3339: 2026-05-02T16:20:11Z.');
  }
  if (table.firstAbsoluteS !== null) return Math.round(table.firstAbsoluteS * 1000);
  throw DecodeError.at('/startedAt', 'Say startedAt= in the query: the time of the first row.');
}

/** One stroke of a recording, as it would be sent; `own`: what is said of it beside its samples. */
function strokeOf(
  { table, timesS, rateHz }: Recording,
  { from, to }: SampleRange,
  startedAtMs: number,
  own: object,
): CutStroke {
  const all = Array.from({ length: to - from }, (_, i) => from + i);
  // A row may hold the supply or the temperature alone, where that has a clock of its own; one that holds nothing was missed.
  const isOfOthers = (row: number) =>
    [table.supply, table.ambient].some((column) => column !== null && !Number.isNaN(column.values[row]));
  const rows =
    rateHz === null
      ? all.filter((row) => table.sides.some(({ values }) => !Number.isNaN(values[row])) || !isOfOthers(row))
      : all;
  const supplyRows = table.supply ? all.filter((row) => !Number.isNaN(table.supply?.values[row])) : [];
  const at = (wanted: readonly number[]) =>
    Float64Array.from(wanted, (row) => roundSeconds(timesS[row] - timesS[from]));
  const clock = rateHz === null ? { t: at(rows) } : { rateHz };
  const supply = table.supply &&
    supplyRows.length > 0 && {
      ...(rateHz !== null && supplyRows.length === all.length ? clock : { t: at(supplyRows) }),
      volts: pick(table.supply, supplyRows),
    };
  const stroke = {
    ...own,
    startedAt: timeText(startedAtMs + Math.round(timesS[from] * 1000)),
    sides: table.sides.map((side) => ({ side: side.name, ...clock, amps: pick(side, rows) })),
    supply: supply || undefined,
    ambientC: table.ambient?.values.slice(from, to).find((value) => !Number.isNaN(value)),
  };
  return { stroke, rows, supplyRows };
}

function pick({ values }: NumberColumn, rows: readonly number[]): Float64Array {
  return Float64Array.from(rows, (row) => values[row]);
}

/** A day beyond the calendar is left for the validation to refuse. */
function timeText(ms: number): string {
  return Math.abs(ms) <= 8.64e15 ? new Date(ms).toISOString() : '';
}

/** From a pointer into the stroke to line and column; what came by the query keeps its name. */
function placeIn(pointer: string, table: RecordedTable, cut: CutStroke | undefined): Place {
  const [, field, place, inner, sample] = pointer.split('/');
  if (field === 'sides' && place !== undefined) {
    const column = table.sides[Number(place)];
    const row = cut?.rows[Number(sample)];
    const isTime = inner === 't' && table.time !== null;
    if (column === undefined) return { pointer };
    return located(
      row === undefined ? table.headerLine : table.lines[row],
      isTime ? table.time.column : column.column,
    );
  }
  if (field === 'supply' && table.supply !== null) {
    const row = cut?.supplyRows[Number(inner)];
    return located(row === undefined ? table.headerLine : table.lines[row], table.supply.column);
  }
  if (field === 'ambientC' && table.ambient !== null) return located(table.headerLine, table.ambient.column);
  return { pointer };
}

function located(line: number, column: number): Place {
  return { pointer: linePointer(line, column), said: `${lineName(line, column)}: ` };
}
