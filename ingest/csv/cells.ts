const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d{1,4})?$/;
const LONGEST_NUMBER = 40;
const NOTHING = new Set(['', 'nan', 'null', '-']);

/** A cell's number, with a point or a comma before the decimals; NaN for an empty cell, null for anything else. */
export function readNumberCell(cell: string): number | null {
  const text = cell.trim();
  if (text.length <= LONGEST_NUMBER && NUMBER.test(text)) return Number(text.replace(',', '.'));
  return NOTHING.has(text.toLowerCase()) ? Number.NaN : null;
}
