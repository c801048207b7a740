import { type CsvError, parse } from 'csv-parse/sync';
import { DecodeError } from '../decodeError.ts';

const LONGEST_RECORD = 10_000;
const MOST_RECORDS = 2_000_000;
const DELIMITERS = ['\t', ';', ','] as const;

/**
 * Gives the records of CSV (RFC 4180) one by one, with the line that each ends on. Tab, semicolon and comma part the
 * fields: the first of these in the first line. Lines may end in LF alone, a byte-order mark is passed over, and
 * empty lines are. Throws `DecodeError` with the line.
 */
export function eachRecord(text: string, take: (cells: readonly string[], line: number) => void): void {
  let records = 0;
  try {
    parse(text, {
      delimiter: delimiterOf(text),
      record_delimiter: ['\r\n', '\n', '\r'],
      bom: true,
      skip_empty_lines: true,
      max_record_size: LONGEST_RECORD,
      // Taking each as it comes keeps millions of small strings from gathering.
      on_record: (cells: string[], { lines }) => {
        if (++records > MOST_RECORDS) throw atLine(lines, null, `More than ${MOST_RECORDS} lines.`);
        take(cells, lines);
        return null;
      },
    });
  } catch (error) {
    if (error instanceof DecodeError) throw error;
    throw unreadable(error);
  }
}

export function delimiterOf(text: string): string {
  const firstLine = /^[^\r\n]*/.exec(text)?.[0] ?? '';
  const plain = firstLine.slice(0, LONGEST_RECORD).replaceAll(/"[^"]*"/g, '');
  return DELIMITERS.find((delimiter) => plain.includes(delimiter)) ?? ',';
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
      return atLine(line, null, 'It has not as many fields as the lines before it.');
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
