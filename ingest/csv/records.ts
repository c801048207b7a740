import { type CsvError, parse } from 'csv-parse/sync';
import { DecodeError } from '../decodeError.ts';

const LONGEST_LINE = 10_000;
const MOST_LINES = 2_000_000;
/** With quotes the library reads it, at a twentieth of the speed: a request must not hold up the others. */
const MOST_QUOTED_LINES = 200_000;
export const DELIMITERS = ['\t', ';', ','] as const;
/** Where the first line is one field alone nothing parts fields, and a comma further down stands before decimals. */
const OF_ONE_COLUMN = ';';
const LINE_FEED = 10;
const RETURN = 13;

type TakeRecord = (cells: readonly string[], line: number) => void;

/**
 * Gives the records of CSV (RFC 4180) one by one, with the line that each ends on. Tab, semicolon and comma part the
 * fields: the first of these in the first line; where none is there, it is one column. Lines may end in LF or CR alone, a byte-order mark is passed over, and
 * empty lines are. Throws `DecodeError` with the line.
 */
export function eachRecord(text: string, take: TakeRecord): void {
  const sound = text.startsWith('\ufeff') ? text.slice(1) : text;
  const quoted = sound.includes('"');
  checkLines(sound, quoted ? MOST_QUOTED_LINES : MOST_LINES);
  if (quoted) eachQuotedRecord(sound, take);
  else eachPlainRecord(sound, take);
}

/** Bounds the work before any is done. */
function checkLines(text: string, most: number): void {
  let line = 1;
  let from = 0;
  for (let i = 0; i <= text.length; i++) {
    const code = i < text.length ? text.charCodeAt(i) : LINE_FEED;
    if (code !== LINE_FEED && code !== RETURN) continue;
    if (i - from > LONGEST_LINE) throw atLine(line, null, `It is longer than ${LONGEST_LINE} characters.`);
    if (line > most) throw atLine(line, null, `More than ${most} lines.`);
    from = i + 1;
    if (code === RETURN && text.charCodeAt(from) === LINE_FEED) continue;
    line++;
  }
}

/** Without quotes a line is a record, and a delimiter parts fields wherever it stands. */
function eachPlainRecord(text: string, take: TakeRecord): void {
  const delimiter = delimiterOf(text) ?? OF_ONE_COLUMN;
  let fields = 0;
  let line = 0;
  for (let from = 0; from < text.length; ) {
    let to = from;
    while (to < text.length && text.charCodeAt(to) !== LINE_FEED && text.charCodeAt(to) !== RETURN) to++;
    line++;
    if (to > from) {
      const cells = text.slice(from, to).split(delimiter);
      if (fields !== 0 && cells.length !== fields) throw ragged(line);
      fields = cells.length;
      take(cells, line);
    }
    from = to + (text.charCodeAt(to) === RETURN && text.charCodeAt(to + 1) === LINE_FEED ? 2 : 1);
  }
}

function eachQuotedRecord(text: string, take: TakeRecord): void {
  try {
    parse(text, {
      delimiter: delimiterOf(text) ?? OF_ONE_COLUMN,
      record_delimiter: ['\r\n', '\n', '\r'],
      skip_empty_lines: true,
      max_record_size: LONGEST_LINE,
      // Taking each as it comes keeps small strings by the hundred thousand from gathering.
      on_record: (cells: string[], { lines }) => {
        take(cells, lines);
        return null;
      },
    });
  } catch (error) {
    if (error instanceof DecodeError) throw error;
    throw unreadable(error);
  }
}

function ragged(line: number): DecodeError {
  return atLine(line, null, 'It has not as many fields as the lines before it.');
}

/** What parts the fields by the first line that is not empty; null where that is one field. */
export function delimiterOf(text: string): string | null {
  const firstLine = /^[\r\n]*([^\r\n]*)/.exec(text)?.[1] ?? '';
  const plain = firstLine.slice(0, LONGEST_LINE).replaceAll(/"[^"]*"/g, '');
  return DELIMITERS.find((delimiter) => plain.includes(delimiter)) ?? null;
}

/** `column` counts from 1, as a spreadsheet does; null for the whole line. */
export function atLine(line: number, column: number | null, detail: string): DecodeError {
  return DecodeError.at(linePointer(line, column), `${lineName(line, column)}: ${detail}`);
}

export function linePointer(line: number, column: number | null): string {
  return column === null ? `/line/${line}` : `/line/${line}/column/${column}`;
}

export function lineName(line: number, column: number | null): string {
  return column === null ? `Line ${line}` : `Line ${line}, column ${column}`;
}

function unreadable(error: unknown): DecodeError {
  // csv-parse says in `lines` and `column` where it stopped; what else it throws carries neither.
  const { code, lines, column } = error as Partial<CsvError> & { lines?: number; column?: number };
  const at = typeof column === 'number' ? column + 1 : null;
  const line = typeof lines === 'number' ? lines : 1;
  switch (code) {
    case 'CSV_RECORD_INCONSISTENT_FIELDS_LENGTH':
    case 'CSV_RECORD_INCONSISTENT_COLUMNS':
      return ragged(line);
    case 'CSV_QUOTE_NOT_CLOSED':
      return atLine(line, at, 'A quoted field is not closed.');
    case 'INVALID_OPENING_QUOTE':
    case 'CSV_INVALID_CLOSING_QUOTE':
    case 'CSV_NON_TRIMABLE_CHAR_AFTER_CLOSING_QUOTE':
      return atLine(line, at, 'A quote stands where none may (RFC 4180, section 2).');
    default:
      return atLine(line, at, 'It cannot be read as CSV.');
  }
}
