import { readNumberCell } from './cells.ts';
import { DELIMITERS } from './records.ts';
import { readTimeCell } from './time.ts';

const LOOKED_AT_LETTERS = 65_536;
/** Titles and two rows: less is no table. */
const FEWEST_LINES = 3;

export interface Passed {
  readonly text: string;
  /** How many lines above the titles were emptied. */
  readonly lines: number;
}

interface Table {
  readonly from: number;
  readonly lines: number;
  readonly titles: readonly string[];
}

/**
 * Empties what a meter writes above its table, such as its model and the day: the titles are the first of the longest
 * run of lines with as many fields each, where none of them is a number or a time. Later lines keep their numbers, by
 * which faults are named. A text without such lines is answered as it is.
 */
export function passPreamble(text: string): Passed {
  const asItIs = { text, lines: 0 };
  const lines = text.slice(0, LOOKED_AT_LETTERS).split(/\r\n|\n|\r/);
  const tables = DELIMITERS.map((delimiter) => longestRun(lines, delimiter));
  const table = tables.reduce((best, one) => (one.lines > best.lines ? one : best));
  const above = lines.slice(0, table.from);
  if (table.lines < FEWEST_LINES || !areTitles(table.titles) || above.every((line) => line === ''))
    return asItIs;
  let at = 0;
  for (let line = 0; line < table.from; line++) {
    at += lines[line].length;
    at += text.startsWith('\r\n', at) ? 2 : 1;
  }
  return { text: '\n'.repeat(table.from) + text.slice(at), lines: table.from };
}

/** Of the lines that a delimiter parts into as many fields each; the first of two that are as long. */
function longestRun(lines: readonly string[], delimiter: string): Table {
  let best: Table = { from: 0, lines: 0, titles: [] };
  let run = best;
  for (const [i, line] of lines.entries()) {
    const fields = fieldsOf(line, delimiter);
    const isNext = fields.length === run.titles.length;
    run = isNext ? { ...run, lines: run.lines + 1 } : { from: i, lines: 1, titles: fields };
    if (fields.length > 1 && run.lines > best.lines) best = run;
  }
  return best;
}

/** A comma in quotes parts no fields: it stands before decimals, or in words where a point does no harm. */
function fieldsOf(line: string, delimiter: string): readonly string[] {
  if (line === '') return [];
  return line.replaceAll(/"([^"]*)"/g, (_, cell: string) => cell.replaceAll(delimiter, '.')).split(delimiter);
}

/** A row below one that lacks a field heads no table: the rows above it would be lost. */
function areTitles(cells: readonly string[]): boolean {
  const isNumber = (cell: string) => Number.isFinite(readNumberCell(cell)) || readTimeCell(cell, 1) !== null;
  return cells.some((cell) => /\p{L}/u.test(cell)) && !cells.some(isNumber);
}
