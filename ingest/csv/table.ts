import { DecodeError } from '../decodeError.ts';
import { MAX_SIDES } from '../limits.ts';
import { readNumberCell } from './cells.ts';
import { type Column, readTitle } from './header.ts';
import { atLine, eachRecord } from './records.ts';
import { readTimeCell, type TimeCell } from './time.ts';

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
  /** The line of each row; the header stands on the first. */
  readonly lines: number[];
}

const DAY_S = 86_400;

/** How the columns are to be understood. */
export interface Reading {
  /** Names the only side where no title does. */
  readonly side: string;
  /** False passes times over. */
  readonly timed: boolean;
  /** What each column is, whatever its title says; null: by the titles. The header row may then be missing. */
  readonly columns: readonly Column[] | null;
}

/** Reads the whole table. */
export function readTable(text: string, reading: Reading): RecordedTable {
  let builder: TableBuilder | null = null;
  eachRecord(text, (cells, line) => {
    if (builder !== null) builder.take(cells, line);
    else {
      builder = new TableBuilder(cells, line, reading);
      if (reading.columns !== null && isAllNumbers(cells)) builder.take(cells, line);
    }
  });
  // The compiler does not see that the callback has been here.
  const built = builder as TableBuilder | null;
  if (built === null) throw DecodeError.at('/line/1', 'Line 1: There is no header row.');
  return built.finish();
}

/** Such a row is no header. */
export function isAllNumbers(cells: readonly string[]): boolean {
  return cells.every((cell) => readNumberCell(cell) !== null);
}

class TableBuilder {
  readonly #columns: readonly Column[];
  readonly #numbers: (NumberColumn | null)[];
  readonly #timeAt: number;
  readonly #seconds: number[] = [];
  readonly #lines: number[] = [];
  readonly #headerLine: number;
  #firstTime: TimeCell | null = null;
  #days = 0;

  constructor(titles: readonly string[], line: number, { side, timed, columns }: Reading) {
    this.#headerLine = line;
    this.#columns = columns ?? titles.map((title) => readTitle(title, side));
    if (this.#columns.length !== titles.length) {
      const said = `${this.#columns.length} columns are said, and the file has ${titles.length}.`;
      throw DecodeError.at('/columns', said);
    }
    const times = this.#columns.flatMap(({ kind }, i) => (kind === 'time' ? [i] : []));
    if (timed && times.length > 1)
      throw atLine(line, times[1] + 1, 'There is another column of times already.');
    this.#timeAt = timed ? (times[0] ?? -1) : -1;
    this.#numbers = this.#columns.map((column, i) => {
      if (column.kind === 'time' || column.kind === 'none') return null;
      return { name: column.kind === 'side' ? column.side : column.kind, column: i + 1, values: [] };
    });
    this.#checkColumns(line);
    if (columns === null && isAllNumbers(titles)) {
      throw atLine(line, null, 'A header row must come before the numbers.');
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
    if (this.#timeAt >= 0) this.#takeTime(cells[this.#timeAt], line);
    for (let i = 0; i < cells.length; i++) {
      const column = this.#columns[i];
      const numbers = this.#numbers[i];
      if (numbers === null) continue;
      const number = readNumberCell(cells[i]);
      if (number === null) throw atLine(line, i + 1, 'Must be a number, or empty for a missed sample.');
      const per = column.kind === 'side' || column.kind === 'supply' ? column.per : 1;
      numbers.values.push(number / per);
    }
    this.#lines.push(line);
  }

  #takeTime(cell: string, line: number): void {
    const column = this.#columns[this.#timeAt];
    const time = readTimeCell(cell, column.kind === 'time' ? column.unitS : 1);
    const wanted = this.#firstTime?.form ?? time?.form;
    if (time === null || time.form !== wanted) {
      const said = wanted === 'number' ? 'a number' : wanted === 'date' ? 'a date and time' : 'a time';
      throw atLine(line, this.#timeAt + 1, `Must be ${said}, as seconds, milliseconds or 16:20:11.25.`);
    }
    this.#firstTime ??= time;
    const last = this.#seconds.at(-1);
    let seconds = time.seconds + this.#days * DAY_S;
    if (time.form === 'clock' && last !== undefined && seconds < last - DAY_S / 2) {
      // Past midnight.
      this.#days++;
      seconds += DAY_S;
    }
    if (last !== undefined && !(seconds > last))
      throw atLine(line, this.#timeAt + 1, 'Times must rise strictly.');
    this.#seconds.push(seconds);
  }

  finish(): RecordedTable {
    if (this.#lines.length === 0) throw atLine(this.#headerLine, null, 'No row follows the header.');
    const of = (kind: Column['kind']) =>
      this.#numbers.filter(
        (numbers, i) => numbers !== null && this.#columns[i].kind === kind,
      ) as NumberColumn[];
    return {
      sides: of('side'),
      supply: of('supply')[0] ?? null,
      ambient: of('ambient')[0] ?? null,
      time: this.#timeAt < 0 ? null : { column: this.#timeAt + 1, seconds: this.#seconds },
      firstAbsoluteS: this.#firstTime?.absolute === true ? this.#firstTime.seconds : null,
      lines: this.#lines,
    };
  }
}
