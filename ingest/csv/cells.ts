const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d{1,4})?$/;
const LONGEST_NUMBER = 40;
const NOTHING = new Set(['', 'nan', 'null', '-']);

/** A cell's number, with a point or a comma before the decimals; NaN for an empty cell, null for anything else. */
export function readNumberCell(cell: string): number | null {
  const text = cell.trim();
  if (text.length <= LONGEST_NUMBER && NUMBER.test(text)) {
    const number = Number(text.replace(',', '.'));
    // 1e999 is more than a double holds, and would be infinite.
    return Number.isFinite(number) ? number : null;
  }
  return NOTHING.has(text.toLowerCase()) ? Number.NaN : null;
}
