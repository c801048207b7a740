import { nameAll, nameSide } from '../../names.ts';
import type { Warning } from '../../warning.ts';
import type { Finding, FindingContext } from '../finding.ts';
import {
  type FoundStretch,
  type HeavyStretch,
  isSamePlace,
  isStretchedLately,
  stretchIsOver,
} from './heavyStretch.ts';

/** A side shares in the rise if it rose by at least this part of the worst side's rise. */
export const SAME_PART = 0.5;
/**
 * If a stretch is this many times as high as the rise over the whole travel, the rise is the stretch's. A guess, no
 * source.
 */
const STANDS_OUT = 3;

/** Whether the highest stretch stands far above the rise over the whole travel (`rise`, as a part of the current). */
export function isFarAbove([highest]: readonly FoundStretch[], rise: number): boolean {
  return highest !== undefined && highest.part > STANDS_OUT * rise;
}

/**
 * Whether the stretch that a warning tells of is over: its sides run as ever in the direction in which it was found.
 */
export function isOverFor(context: FindingContext, { side, evidence }: Warning): boolean {
  const sides = side === null ? context.state.room.sides : [side];
  return evidence.way === context.direction && sides.every((name) => stretchIsOver(context, name));
}

/** A stretch that draws this much more, as a part of its normal, needs a service: a guess, no source. */
const HIGH_STRETCH = 0.6;

/** The finding that tells of stretches of the travel that draw more. `stretches`: at least one, the highest first. */
export function ofStretches(
  { state, direction }: FindingContext,
  stretches: readonly HeavyStretch[],
): Finding {
  const { sides } = state.room;
  const [highest] = stretches;
  const { from, to, part } = highest;
  const isAlike = (side: string) => {
    const own = stretches.find((other) => other.side === side);
    if (own === undefined) return isStretchedLately({ state }, side);
    return own.part >= SAME_PART * highest.part && isSamePlace(own, highest);
  };
  const isOfAll = sides.length > 1 && sides.every(isAlike);
  const percent = (of: number) => Math.round(100 * of);
  const who = isOfAll ? nameAll(sides) : nameSide(highest.side, sides);
  return {
    kind: 'rising-draw',
    side: isOfAll ? null : highest.side,
    direction: null,
    position: (from + to) / 2,
    pattern: null,
    severity: part >= HIGH_STRETCH ? 'service' : 'watch',
    headline: `The running current of ${who} is up to ${percent(part)} % above this room's own normal between ${percent(from)} % and ${percent(to)} % of the way out.`,
    evidence: {
      risePercent: percent(part),
      from: Math.round(1000 * from) / 1000,
      to: Math.round(1000 * to) / 1000,
      way: direction,
    },
  };
}
