import { downsample } from '../../analysis/statistics/downsample.ts';
import { DIRECTIONS, type Direction } from '../../analysis/trace.ts';
import { DecodeError, type FieldFault } from '../decodeError.ts';
import type { SentQuery } from '../forms/sentForm.ts';
import { decodeStrokes } from '../json/strokes.ts';
import { readColumns } from './columns.ts';
import type { Column } from './header.ts';
import { passPreamble } from './passPreamble.ts';
import { namingOf, type Recording, readRecording } from './recording.ts';
import { delimiterOf, eachRecord } from './records.ts';
import { type Role, readRoles, roleOf } from './roles.ts';
import { directionsToShow, startOf, strokesOfRecording, whyUntold } from './strokesOfTable.ts';
import { isAllNumbers } from './table.ts';
import { titlesWithUnits } from './unitRow.ts';

export interface PreviewedColumn extends Role {
  /** Counts from 1. */
  readonly column: number;
  /** As the header row has it; null where there is no header row. */
  readonly title: string | null;
  /** The first few cells below it. */
  readonly examples: readonly string[];
}

export interface PreviewedStroke {
  /** Where in the recording, seconds from its first row. */
  readonly fromS: number;
  readonly toS: number;
  readonly samples: number;
  /** Null where the recording's start is not known. */
  readonly startedAtMs: number | null;
  /** As it was said, else by the sign of the current; null where that does not tell. */
  readonly direction: Direction | null;
}

/** One line of the picture of the whole recording, thinned. */
export interface PreviewedLine {
  readonly name: string;
  readonly seconds: readonly number[];
  readonly values: readonly number[];
}

/** What would be made of a CSV if it were sent so. */
export interface CsvPreview {
  /** How many lines above the titles are passed over. */
  readonly passedLines: number;
  /** What parts the columns; null: there is one. */
  readonly delimiter: string | null;
  readonly columns: readonly PreviewedColumn[];
  readonly rows: number;
  readonly startedAtMs: number | null;
  readonly strokes: readonly PreviewedStroke[];
  readonly sides: readonly PreviewedLine[];
  readonly supply: PreviewedLine | null;
  /** What stands in the way of storing it; pointers lead into the file or to what may be said in the query. */
  readonly problems: readonly FieldFault[];
}

export interface PreviewedRoom {
  readonly sides: readonly string[];
  readonly positiveDirection: Direction;
}

const EXAMPLES = 3;
const LINE_BUCKETS = 1500;
const MOST_PROBLEMS = 20;

/**
 * Reads a CSV as far as it can be read, by the very code that would store it, and stores nothing; asks for the directions also
 * where several strokes are all of one sign. Throws `DecodeError` only where there is no row at all.
 */
export function previewCsv(sent: string, said: SentQuery, room: PreviewedRoom): CsvPreview {
  const query = { ...said, roomSides: room.sides };
  const { text, lines: passedLines } = passPreamble(sent);
  const head = { passedLines, delimiter: delimiterOf(text), columns: columnsOf(text, query) };
  const problems: FieldFault[] = unknownSides(head.columns, room);
  const nothing = { rows: 0, startedAtMs: null, strokes: [], sides: [], supply: null };
  const recording = attempt(problems, () => readRecording(text, query));
  if (recording === null) return { ...head, ...nothing, problems };
  const { table, timesS, flows } = recording;
  // A logger's record of nothing is kept as it was sent; somebody who looks at it is not offered it for a stroke.
  const ranges = flows ? recording.ranges : [];
  if (!flows) problems.push({ pointer: '', detail: 'No current flows in this recording.' });
  const startedAtMs = attempt(problems, () => startOf(query, table));
  attempt(problems, () => checkStrokes(recording, query, startedAtMs));
  const told = directionsToShow(table, ranges, room.positiveDirection);
  const untold = query.direction === undefined ? told.indexOf(null) : -1;
  const asked = problems.some(({ pointer }) => pointer === '/direction');
  if (untold >= 0 && !asked) problems.push({ pointer: '/direction', detail: whyUntold(untold, told) });
  const line = (name: string, values: readonly number[]) => thinLine(name, timesS, values);
  return {
    ...head,
    rows: table.lines.length,
    startedAtMs,
    strokes: ranges.map((range, n) => ({
      fromS: timesS[range.from],
      toS: timesS[range.to - 1],
      samples: range.to - range.from,
      startedAtMs: startedAtMs === null ? null : startedAtMs + Math.round(1000 * timesS[range.from]),
      direction: saidDirection(query, n, ranges.length) ?? told[n],
    })),
    sides: table.sides.map(({ name, values }) => line(name, values)),
    supply: table.supply && line('supply', table.supply.values),
    problems: withoutRepeats(problems).slice(0, MOST_PROBLEMS),
  };
}

/** Null, and the faults told, where it throws `DecodeError`. */
function attempt<Answer>(problems: FieldFault[], ask: () => Answer): Answer | null {
  try {
    return ask();
  } catch (error) {
    if (!(error instanceof DecodeError)) throw error;
    problems.push(...error.faults);
    return null;
  }
}

/** All that sending would check. The start has been told of already where it is missing. */
function checkStrokes(recording: Recording, query: SentQuery, startedAtMs: number | null): void {
  const startedAt = startedAtMs === null ? new Date(0).toISOString() : query.startedAt;
  const form = strokesOfRecording(recording, { key: 'preview', roomId: '', ...query, startedAt });
  const faults = attempted(form.strokes).map(({ pointer, detail }) => {
    const place = form.placeOf(pointer);
    return { pointer: place.pointer, detail: (place.said ?? '') + detail };
  });
  if (faults.length > 0) throw new DecodeError(faults);
}

function attempted(strokes: unknown): readonly FieldFault[] {
  try {
    return decodeStrokes(strokes).flatMap((one) => (one.stroke === null ? one.error.faults : []));
  } catch (error) {
    if (!(error instanceof DecodeError)) throw error;
    return error.faults;
  }
}

function columnsOf(text: string, query: SentQuery): PreviewedColumn[] {
  const first = firstRecords(text, 2 + EXAMPLES);
  if (first.length === 0) throw DecodeError.at('', 'There is nothing in the file.');
  const hasHeader = !isAllNumbers(first[0]);
  const united = first.length > 1 ? titlesWithUnits(first[0], first[1]) : null;
  const from = !hasHeader ? 0 : united === null ? 1 : 2;
  const below = first.slice(from, from + EXAMPLES);
  const titles = united ?? first[0];
  const said = query.columns === undefined ? null : readRoles(query.columns);
  const titled = hasHeader ? readColumns(titles, below[0] ?? null, namingOf(query)).columns : [];
  return titles.map((title, i) => {
    const column: Column = said?.[i] ?? titled[i] ?? { kind: 'none' };
    return {
      column: i + 1,
      title: hasHeader ? title.trim() : null,
      examples: below.flatMap((cells) => (cells[i] === undefined ? [] : [cells[i].trim().slice(0, 40)])),
      ...roleOf(column),
    };
  });
}

/** The first lines alone are enough, and a fault further down is told by the reading of the whole. */
function firstRecords(text: string, count: number): string[][] {
  const records: string[][] = [];
  const lines = text.slice(0, FIRST_CHARACTERS).split(/\r\n|\r|\n/);
  const few = lines.filter((line) => line.trim() !== '').slice(0, count);
  try {
    eachRecord(few.join('\n'), (cells) => void records.push([...cells]));
  } catch (error) {
    if (!(error instanceof DecodeError) || records.length === 0) throw error;
  }
  return records;
}

const FIRST_CHARACTERS = 50_000;

function unknownSides(columns: readonly PreviewedColumn[], room: PreviewedRoom): FieldFault[] {
  return columns.flatMap(({ kind, side, column, title }) =>
    kind !== 'side' || side === null || room.sides.includes(side)
      ? []
      : [
          {
            pointer: `/column/${column}`,
            detail: `Column ${column}${title === null ? '' : ` (“${title.slice(0, 60)}”)`}: the room has no such side. It has: ${room.sides.join(', ')}.`,
          },
        ],
  );
}

function saidDirection({ direction }: SentQuery, n: number, count: number): Direction | null {
  const said = direction?.split(',').map((one) => one.trim()) ?? [];
  const own = said.length === count ? said[n] : said.length === 1 ? said[0] : undefined;
  return DIRECTIONS.find((direction) => direction === own) ?? null;
}

function thinLine(name: string, timesS: Float64Array, values: readonly number[]): PreviewedLine {
  const kept = downsample(values, Math.min(LINE_BUCKETS, values.length));
  return { name, seconds: kept.map((i) => timesS[i]), values: kept.map((i) => values[i]) };
}

function withoutRepeats(faults: readonly FieldFault[]): FieldFault[] {
  const seen = new Set<string>();
  return faults.filter(({ pointer, detail }) => {
    const said = `${pointer} ${detail}`;
    return !seen.has(said) && seen.add(said);
  });
}
