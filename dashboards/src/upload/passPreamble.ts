/** As the service looks for what parts the columns. */
const DELIMITERS = ['\t', ';', ','] as const;
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
}

/**
 * Empties what a meter writes above its table, such as its model and the day: the titles are the first of the longest
 * run of lines with as many fields each. Later lines keep their numbers, by which the service names them.
 */
export function passPreamble(text: string): Passed {
  const asItIs = { text, lines: 0 };
  const lines = text.slice(0, LOOKED_AT_LETTERS).split(/\r\n|\n|\r/);
  const tables = DELIMITERS.map((delimiter) => longestRun(lines, delimiter));
  const table = tables.reduce((best, one) => (one.lines > best.lines ? one : best));
  const above = lines.slice(0, table.from);
  // Below the title of a single column, decimal commas would part its numbers.
  const isTitled = /\p{L}/u.test(lines[table.from]);
  if (table.lines < FEWEST_LINES || !isTitled || above.every((line) => line === '')) return asItIs;
  let at = 0;
  for (let line = 0; line < table.from; line++) {
    at += lines[line].length;
    at += text.startsWith('\r\n', at) ? 2 : 1;
  }
  return { text: '\n'.repeat(table.from) + text.slice(at), lines: table.from };
}

/** Of the lines that a delimiter parts into as many fields each; the first of two that are as long. */
function longestRun(lines: readonly string[], delimiter: string): Table {
  let best = { from: 0, lines: 0 };
  let from = 0;
  let fields = 0;
  for (const [i, line] of lines.entries()) {
    const here = fieldsOf(line, delimiter);
    if (here !== fields) from = i;
    fields = here;
    if (fields > 1 && i + 1 - from > best.lines) best = { from, lines: i + 1 - from };
  }
  return best;
}

const fieldsOf = (line: string, delimiter: string): number =>
  line === '' ? 0 : line.replaceAll(/"[^"]*"/g, '').split(delimiter).length;
