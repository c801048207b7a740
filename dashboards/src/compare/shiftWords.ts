import type { ComparedShift } from '../api/types.ts';
import { percentOf, withDecimals } from '../format.ts';
import { compareWords } from '../words/compare.ts';

/** The power of ten of the first digit: 0 for 3.2, -2 for 0.04. */
const firstDigit = (value: number): number => Math.floor(Math.log10(Math.abs(value)));

/** Beyond thousandths of its unit nothing here is known. */
const MOST_DECIMALS = 3;

/**
 * Both ends of an interval with as many decimals: two digits of the end that is further off, for it is no surer than
 * that. Where no change is ruled out, the nearer end keeps a digit too: it is not 0.
 */
function decimalsOf(near: number, far: number, excludesZero: boolean): number {
  const wanted = far === 0 ? 0 : 1 - firstDigit(far);
  const few = Math.min(MOST_DECIMALS, Math.max(0, wanted));
  return excludesZero && near !== 0 ? Math.max(few, -firstDigit(near)) : few;
}

const way = (value: number): string => (value < 0 ? compareWords.less : compareWords.more);

/** One measure's shift with its interval, in words; null where there were too few strokes to tell. */
export function shiftWords(compared: ComparedShift): string | null {
  const { measure, shift, lower, upper, unit, excludesZero } = compared;
  if (shift === null || lower === null || upper === null) return null;
  const say = compareWords;
  const isPart = unit === '1';
  const scale = isPart ? 100 : 1;
  const [near, far] = [lower, upper].sort((a, b) => Math.abs(a) - Math.abs(b));
  const decimals = decimalsOf(near * scale, far * scale, excludesZero);
  const size = (value: number): string => {
    const bare = Math.abs(value);
    return isPart ? percentOf(bare, decimals) : `${withDecimals(bare, decimals)}\u00a0${unit}`;
  };
  // A part has moved by so much of the whole, and not by so much of what it was.
  const whole = measure === 'share' ? say.ofLoad : say.ofRunning;
  const change = (value: number): string => `${isPart ? whole(size(value)) : size(value)} ${way(value)}`;
  return excludesZero
    ? say.sure(change(shift), size(near), size(far))
    : say.unsure(change(lower), change(upper));
}
