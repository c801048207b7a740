/** How often something showed since it was said. */
export interface HowOften {
  /** Up to the latest stroke that showed it. */
  strokes: number;
  shown: number;
  /** Strokes that did not show it since; since work was done, where there was some. */
  quiet: number;
  worked: boolean;
}

/** Of what was never looked at. */
export const NOT_YET: HowOften = { strokes: 0, shown: 0, quiet: 0, worked: false };

/** One more stroke taken in. */
export function goingOn(often: HowOften, isShown: boolean): HowOften {
  const { strokes, shown, quiet } = often;
  if (isShown) return { strokes: strokes + quiet + 1, shown: shown + 1, quiet: 0, worked: false };
  return { ...often, quiet: shown === 0 ? 0 : quiet + 1 };
}

/** By side. */
export type HowOftenOfSides = Record<string, HowOften>;

/**
 * Takes the latest stroke of a side in; `latest`: whether it showed on each of the latest ones, the last of which it is.
 * While nothing is said of the side nothing is counted, and once it is, from those strokes on.
 */
export function keepHowOften(
  sides: HowOftenOfSides,
  side: string,
  isSaid: boolean,
  latest: readonly boolean[],
): void {
  const before = sides[side];
  if (!isSaid) delete sides[side];
  else sides[side] = (before === undefined ? latest : latest.slice(-1)).reduce(goingOn, before ?? NOT_YET);
}

/** Work was done on a side, or on all (null): the strokes after it tell whether it helped. */
export function noteWork(sides: HowOftenOfSides, side: string | null): void {
  for (const [name, { strokes, shown, quiet }] of Object.entries(sides))
    if (side === null || side === name)
      sides[name] = { strokes: strokes + quiet, shown, quiet: 0, worked: true };
}

/** The fewest quiet strokes after which something is over, the most that are waited for, and how likely it is there still. */
interface Patience {
  readonly fewest: number;
  readonly most: number;
  readonly stillThere: number;
}

/**
 * After work that may have ended it, and otherwise: `most` quiet strokes are always enough, and fewer once the probability that it
 * is there still falls below this. Guesses, no source.
 */
const AFTER_WORK = { fewest: 3, most: 8, stillThere: 0.05 };
const MOST = 24;
const STILL_THERE = 0.01;

/**
 * Whether what was said has not shown for long enough to be over: for at least `fewest` strokes, and for longer than one that
 * shows as often as it did would hide. How often that is, is known from few strokes: beforehand a rate is as likely as by the
 * rule of Jeffreys (1946), Beta(1/2, 1/2). After work fewer will do. What never showed is over.
 */
export function isOverSince(often: HowOften | undefined, fewest: number): boolean {
  const { strokes, shown, quiet, worked } = often ?? NOT_YET;
  if (shown === 0) return true;
  const patience: Patience = worked
    ? { ...AFTER_WORK, fewest: Math.min(AFTER_WORK.fewest, fewest) }
    : { fewest, most: MOST, stillThere: STILL_THERE };
  if (quiet < patience.fewest) return false;
  return quiet >= patience.most || hidesFor(strokes, shown, quiet) < patience.stillThere;
}

/** How likely what showed on some of so many strokes is there still, though it did not show on the `quiet` ones after them. */
function hidesFor(strokes: number, shown: number, quiet: number): number {
  let likely = 1;
  for (let i = 0; i < quiet; i++) likely *= (strokes - shown + 0.5 + i) / (strokes + 1 + i);
  return likely;
}
