import { theReader } from '../../reader.ts';

const FEWEST_DECIMALS = 2;
const MOST_DECIMALS = 6;

/** As many decimals as tell one step from the next. */
function decimalsOf(step: number): number {
  let decimals = FEWEST_DECIMALS;
  while (
    decimals < MOST_DECIMALS &&
    Math.abs(step * 10 ** decimals - Math.round(step * 10 ** decimals)) > 1e-6
  )
    decimals++;
  return decimals;
}

/** A number at an axis whose labels stand so far apart. */
export function tickNumber(value: number, step = 1): string {
  const maximumFractionDigits = decimalsOf(step);
  return new Intl.NumberFormat(theReader().locale, { maximumFractionDigits }).format(value);
}
