import { DecodeError } from '../decodeError.ts';
import { MAX_SIDES } from '../limits.ts';
import { readNumberCell, readQuantityCell } from './cells.ts';
import { readColumns, type SideNaming, type UnitColumn } from './columns.ts';
import { type Column, unitOfCell } from './header.ts';
import { atLine, eachRecord } from './records.ts';
import { isDayAlone, readTimeCell, type TimeCell } from './time.ts';
import { titlesWithUnits } from './unitRow.ts';
import type { Unit } from './units.ts';

/** One column of numbers; NaN where a cell is empty. `column` counts from 1. */
export interface NumberColumn {
  readonly name: string;
  readonly column: number;
  readonly values: number[];
}

/** A recording as its CSV has it, row by row. */
export interface RecordedTable {
  readonly sides: readonly NumberColumn[];
  readonly supply: NumberColumn | null;
  readonly ambient: NumberColumn | null;
  /** Seconds on the column's own scale; null where there is no column of times, or it is not wanted. */
  readonly time: { readonly column: number; readonly seconds: number[] } | null;
  /** Seconds since 1970 of the first row, where the time column says so. */
  readonly firstAbsoluteS: number | null;
  /** The line that the titles stand on; that of the first row where there are none. */
  readonly headerLine: number;
  /** The line of each row. */
  readonly lines: number[];
}

/** How the columns are to be understood. */
export interface Reading {
  readonly naming: SideNaming;
  /** False passes times over. */
  readonly timed: boolean;
  /** What each column is, whatever its title says; null: by the titles. The header row may then be missing. */
  readonly columns: readonly Column[] | null;
}

interface Head {
  readonly titles: readonly string[];
  readonly line: number;
  readonly hasUnitRow: boolean;
}

/** Reads the whole table. */
export function readTable(text: string, reading: Reading): RecordedTable {
  let head: Head | null = null;
  let builder: TableBuilder | null = null;
  eachRecord(text, (cells, line) => {
    if (builder !== null) return builder.take(cells, line);
    if (head === null) {
      head = { titles: cells, line, hasUnitRow: false };
      return;
    }
    const titles = head.hasUnitRow ? null : titlesWithUnits(head.titles, cells);
    if (titles !== null) {
      head = { ...head, titles, hasUnitRow: true };
      return;
    }
    builder = new TableBuilder(head.titles, head.line, reading, cells);
    builder.take(cells, line);
  });
  // The compiler does not see that the callback has been here.
  const [begun, built] = [head as Head | null, builder as TableBuilder | null];
  if (begun === null) throw DecodeError.at('/line/1', 'Line 1: There is no header row.');
  return (built ?? new TableBuilder(begun.titles, begun.line, reading, null)).finish();
}

/** Such a row is no header. */
export function isAllNumbers(cells: readonly string[]): boolean {
  return cells.every((cell) => readNumberCell(cell) !== null);
}

/** A meter that changes its range as it goes may change the unit with it, which the column's numbers do not show. */
function checkUnit({ at, unit }: UnitColumn, cell: string, line: number): void {
  if (cell.trim() === '' || (unit !== null && unitOfCell(cell) === unit)) return;
  const said =
    unit === null ? 'It must name the unit from the first row on' : `It must be ${unit} in every row`;
  throw atLine(line, at + 1, `${said}, and be A, mA, V, mV, C, °F, s, ms or us.`);
}

const NOT_RISING =
  'Times must rise strictly. Where they are too coarse to, say rateHz= instead: samples a second.';

/** NaN for an empty cell. A cell that says its own unit goes by that. */
function numberOf(column: Column, cell: string, line: number, at: number): number {
  const number = readNumberCell(cell);
  if (number !== null) {
    if (column.kind === 'ambient') return column.scale === 'F' ? celsiusOf(number) : number;
    return column.kind === 'side' || column.kind === 'supply' ? number / column.per : number;
  }
  const said = readQuantityCell(cell);
  const known = said === null ? null : asMeasured(column.kind, said.number, said.unit);
  if (known === null) throw atLine(line, at + 1, 'Must be a number, or empty for a missed sample.');
  return known;
}

/** In amperes, volts or degrees Celsius; null where such a column holds nothing of that unit. */
function asMeasured(kind: Column['kind'], number: number, unit: Unit): number | null {
  switch (`${kind} ${unit}`) {
    case 'side A':
    case 'supply V':
    case 'ambient C':
      return number;
    case 'side mA':
    case 'supply mV':
      return number / 1000;
    case 'ambient F':
      return celsiusOf(number);
    default:
      return null;
  }
}

/** To a hundredth of a degree, which no thermometer of a logger tells. */
function celsiusOf(fahrenheit: number): number {
  return Math.round((fahrenheit - 32) / 0.018) / 100;
}

class TableBuilder {
  readonly #columns: readonly Column[];
  readonly #units: readonly UnitColumn[];
  readonly #numbers: (NumberColumn | null)[];
  readonly #timeAt: number;
  /** Of the column that says the day beside a clock; -1: none does. */
  readonly #dayAt: number;
  readonly #seconds: number[] = [];
  readonly #lines: number[] = [];
  readonly #headerLine: number;
  #firstTime: TimeCell | null = null;
  #day = '';
  #turns = 0;

  /** `below`: the record that follows the first one; null: none does. */
  constructor(
    titles: readonly string[],
    line: number,
    { naming, timed, columns }: Reading,
    below: readonly string[] | null,
  ) {
    this.#headerLine = line;
    const read = columns === null ? readColumns(titles, below, naming) : { columns, units: [] };
    this.#columns = read.columns;
    this.#units = read.units;
    if (this.#columns.length !== titles.length) {
      const said = `${this.#columns.length} columns are said, and the file has ${titles.length}.`;
      throw DecodeError.at('/columns', said);
    }
    const all = this.#columns.flatMap(({ kind }, i) => (kind === 'time' ? [i] : []));
    const times = all.length === 1 ? all : all.filter((i) => !isDayAlone(below?.[i] ?? ''));
    if (timed && times.length > 1)
      throw atLine(line, times[1] + 1, 'There is another column of times already.');
    this.#timeAt = timed ? (times[0] ?? -1) : -1;
    this.#dayAt = timed ? (all.find((i) => !times.includes(i)) ?? -1) : -1;
    this.#numbers = this.#columns.map((column, i) => {
      if (column.kind === 'time' || column.kind === 'none') return null;
      return { name: column.kind === 'side' ? column.side : column.kind, column: i + 1, values: [] };
    });
    this.#checkColumns(line);
    if (isAllNumbers(titles)) {
      if (columns === null) throw atLine(line, null, 'A header row must come before the numbers.');
      this.take(titles, line);
    }
  }

  #checkColumns(line: number): void {
    const seen = new Set<string>();
    for (const [i, column] of this.#columns.entries()) {
      if (column.kind === 'time' || column.kind === 'none') continue;
      const name = column.kind === 'side' ? `side ${column.side}` : column.kind;
      if (seen.has(name)) throw atLine(line, i + 1, `The header has ${name} twice.`);
      seen.add(name);
    }
    const sides = this.#columns.filter(({ kind }) => kind === 'side').length;
    if (sides === 0)
      throw atLine(line, null, 'The header names no current: such as "front A", "rear mA" or "amps".');
    if (sides > MAX_SIDES) throw atLine(line, null, `The header names more than ${MAX_SIDES} sides.`);
  }

  take(cells: readonly string[], line: number): void {
    if (this.#timeAt >= 0) this.#takeTime(cells, line);
    for (const unit of this.#units) checkUnit(unit, cells[unit.at], line);
    for (let i = 0; i < cells.length; i++) {
      const column = this.#columns[i];
      const numbers = this.#numbers[i];
      if (numbers !== null) numbers.values.push(numberOf(column, cells[i], line, i));
      else if (column.kind === 'none' && column.holdsText && Number.isFinite(readNumberCell(cells[i])))
        throw atLine(line, i + 1, 'A number stands in a column of words: say by columns= what it is.');
    }
    this.#lines.push(line);
  }

  #takeTime(cells: readonly string[], line: number): void {
    const column = this.#columns[this.#timeAt];
    const time = readTimeCell(cells[this.#timeAt], column.kind === 'time' ? column.unitS : 1);
    const { form: wanted, turnS } = this.#firstTime ?? time ?? {};
    if (time === null || time.form !== wanted || time.turnS !== turnS) {
      const said = wanted === 'number' ? 'a number' : wanted === 'date' ? 'a date and time' : 'a time';
      throw atLine(line, this.#timeAt + 1, `Must be ${said}, as seconds, milliseconds or 16:20:11.25.`);
    }
    const last = this.#seconds.at(-1);
    // Past midnight, or past the hour.
    const isNextTurn = last !== undefined && time.seconds + this.#turns * time.turnS < last - time.turnS / 2;
    if (time.form === 'clock') {
      if (isNextTurn) this.#turns++;
      this.#takeDay(this.#dayAt < 0 ? time.day : cells[this.#dayAt], line, isNextTurn);
    }
    this.#firstTime ??= time;
    const seconds = time.seconds + this.#turns * time.turnS;
    if (last !== undefined && !(seconds > last)) throw atLine(line, this.#timeAt + 1, NOT_RISING);
    this.#seconds.push(seconds);
  }

  /** Which comes first in a date, day or month, need not be known: that it changes is enough. */
  #takeDay(day: string, line: number, isNextTurn: boolean): void {
    if (this.#firstTime !== null && day.trim() !== this.#day && !isNextTurn)
      throw atLine(
        line,
        this.#timeAt + 1,
        'The day changes before its clock is round: send each day by itself.',
      );
    this.#day = day.trim();
  }

  finish(): RecordedTable {
    if (this.#lines.length === 0) throw atLine(this.#headerLine, null, 'No row follows the header.');
    const of = (kind: Column['kind']) =>
      this.#numbers.flatMap((numbers, i) =>
        numbers !== null && this.#columns[i].kind === kind ? [numbers] : [],
      );
    return {
      sides: of('side'),
      supply: of('supply')[0] ?? null,
      ambient: of('ambient')[0] ?? null,
      time: this.#timeAt < 0 ? null : { column: this.#timeAt + 1, seconds: this.#seconds },
      firstAbsoluteS: this.#firstTime?.absolute === true ? this.#firstTime.seconds : null,
      headerLine: this.#headerLine,
      lines: this.#lines,
    };
  }
}
