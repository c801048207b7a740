import { stringify } from 'csv-stringify/sync';

/** Rows as a table, for whoever opens it in a spreadsheet: what that would take for a formula is text. */
export function csvTable<Column extends string>(
  columns: readonly Column[],
  rows: readonly Readonly<Partial<Record<Column, string | number | null>>>[],
): string {
  return stringify([...rows], {
    header: true,
    columns: [...columns],
    record_delimiter: '\r\n',
    escape_formulas: true,
  });
}
