import { saysUnit } from './header.ts';
import { isOtherUnit, unitNamed } from './units.ts';

const BRACKETS = /^[([](.*)[)\]]$/;

/**
 * The titles with the units that a second row of them says, as `Time,Channel A` over `(s),(mA)`; null where the row
 * says none, or anything else.
 */
export function titlesWithUnits(titles: readonly string[], below: readonly string[]): string[] | null {
  const words = below.map((cell) => cell.trim().replace(BRACKETS, '$1').trim());
  const areUnits = words.every((word) => word === '' || unitNamed(word) !== null || isOtherUnit(word));
  if (!areUnits || words.every((word) => word === '')) return null;
  return titles.map((title, i) => (saysUnit(title) || !words[i] ? title : `${title.trim()} (${words[i]})`));
}
