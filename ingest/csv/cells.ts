import { type Unit, unitNamed } from './units.ts';

const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d{1,4})?$/;
const LONGEST_NUMBER = 40;
/** What meters write for a reading that they have not, as one beyond their range is: `OL`. */
const NOTHING = new Set([
  ...['', 'nan', 'null', 'none', 'n/a', 'na', '-', '--', '---', '----', '-----'],
  ...['ol', '-ol', '+ol', 'o.l', 'ovld', 'ovl', 'overload', 'overrange'],
]);
/** A sign that typesetters take for a minus. */
const LONG_MINUS = '\u2212';
const WITH_UNIT = /^([^a-zA-Z°µμ]+)([a-zA-Z°µμ]+)(?:\s+(?:dc|ac))?$/i;
/** Units are written with no more letters. */
const LONGEST_WITH_UNIT = LONGEST_NUMBER + 20;

/** A cell's number, with a point or a comma before the decimals; NaN for an empty cell, null for anything else. */
export function readNumberCell(cell: string): number | null {
  const text = cell.trim();
  if (text.length <= LONGEST_NUMBER && NUMBER.test(text)) {
    const number = Number(text.replace(',', '.'));
    // 1e999 is more than a double holds, and would be infinite.
    return Number.isFinite(number) ? number : null;
  }
  if (text.startsWith(LONG_MINUS)) return readNumberCell(`-${text.slice(1)}`);
  return NOTHING.has(text.toLowerCase()) ? Number.NaN : null;
}

/** A number that its cell says the unit of, as `5.2 A` does; null for anything else. */
export function readQuantityCell(cell: string): { readonly number: number; readonly unit: Unit } | null {
  const [, digits, word] = WITH_UNIT.exec(cell.trim().slice(0, LONGEST_WITH_UNIT)) ?? [];
  if (digits === undefined) return null;
  const number = readNumberCell(digits);
  const unit = unitNamed(word);
  return number === null || Number.isNaN(number) || unit === null ? null : { number, unit };
}
