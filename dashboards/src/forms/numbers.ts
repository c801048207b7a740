import { theReader } from '../reader.ts';

/** A thousand to some, and one to others: whoever typed it is asked. */
const EITHER_WAY = /^-?[1-9]\d{0,2},\d{3}$/;

/** A number as people type it, with a point or a comma; null for nothing, NaN for what is none or may be two. */
export function typedNumber(text: string): number | null {
  const typed = text.trim();
  if (EITHER_WAY.test(typed)) return Number.NaN;
  const plain = typed.replace(',', '.');
  if (plain === '') return null;
  return /^-?(?:\d+(?:\.\d+)?|\.\d+)$/.test(plain) ? Number(plain) : Number.NaN;
}

/** Whether a number was typed that lies between two, both taken; whole ones alone where that is said. */
export function isWithin(typed: number, least: number, most: number, whole?: 'whole'): boolean {
  return typed >= least && typed <= most && (whole === undefined || Number.isInteger(typed));
}

const perMetre = (): number => (theReader().us ? 1 / 0.0254 : 100);

/** A length as typed in the reader's unit (centimetres or inches), in metres. */
export function typedMetres(text: string): number | null {
  const typed = typedNumber(text);
  // A tenth of a millimetre is more than anybody measures: no digits that nobody typed.
  return typed === null ? null : Math.round((typed / perMetre()) * 10_000) / 10_000;
}

/** A length as a field shows it, in the reader's unit. */
export function metresField(metres: number | null): string {
  return metres === null ? '' : String(Math.round(metres * perMetre() * 10) / 10);
}

export const fieldOf = (value: number | string | null): string => (value === null ? '' : String(value));
