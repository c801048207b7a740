import { goingOn, type HowOften, isOverSince, NOT_YET } from './howOften.ts';

/** What comes back within so many strokes was never gone, and is believed to be only after twice as many as before. Guesses. */
const COMES_BACK = 40;
const MOST_RETURNS = 3;

/** How what is said of one thing has come and gone. */
export interface Comings {
  /** Strokes in a row that nothing spoke for it. */
  quiet: number;
  /** Strokes since it was cleared last; null: it has not been. */
  sinceCleared: number | null;
  /** How often it came back soon. */
  returns: number;
  /** How often something spoke for it since it was said. */
  often: HowOften;
}

/** Nothing was said yet. */
export function beginComings(): Comings {
  return { quiet: 0, sinceCleared: null, returns: 0, often: NOT_YET };
}

/** Takes one more stroke in, and whether anything `spoke` for it. */
export function noteComing(comings: Comings, spoke: boolean): void {
  comings.quiet = spoke ? 0 : comings.quiet + 1;
  // Counted since it was said; not after work that may have ended it, which begins these anew.
  if (comings.often.shown > 0) comings.often = goingOn(comings.often, spoke);
  if (comings.sinceCleared !== null) comings.sinceCleared++;
}

/** It is said anew, after what the `latest` strokes told, of which this is the last: whether that is soon is remembered. */
export function saidAnew(comings: Comings, latest: readonly boolean[]): void {
  const isSoon = comings.sinceCleared !== null && comings.sinceCleared < COMES_BACK;
  comings.returns = isSoon ? Math.min(MOST_RETURNS, comings.returns + 1) : 0;
  comings.often = latest.reduce(goingOn, NOT_YET);
}

/**
 * Whether it is over: after so many quiet strokes, twice as many for each time that it came back, and where it never did
 * after the `first` so many; and after more where something spoke for it on some strokes only, as these may hide it for as long.
 * It is remembered as cleared then.
 */
export function isOverAfter(comings: Comings, strokes: number, first = strokes): boolean {
  const needed = comings.returns === 0 ? first : strokes * 2 ** comings.returns;
  if (comings.quiet < needed || !isOverSince(comings.often, needed)) return false;
  comings.sinceCleared = 0;
  return true;
}
