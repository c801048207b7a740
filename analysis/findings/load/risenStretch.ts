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

/** A side belongs to the rise when it rose by at least this part of what the worst side did. */
export const SAME_PART = 0.5;
/** Where a stretch is so many times as high as what the whole travel takes more, the rise is of the stretch. A guess, no source. */
const STANDS_OUT = 3;

/** Whether the highest stretch stands far above what the whole travel takes more; `rise`: that, as a part. */
export function isFarAbove([highest]: readonly FoundStretch[], rise: number): boolean {
  return highest !== undefined && highest.part > STANDS_OUT * rise;
}

/** A stretch is over where the way that it was found on is as ever; `open`: what was said of it. */
export function isOverFor(context: FindingContext, { side, evidence }: Warning): boolean {
  const sides = side === null ? context.state.room.sides : [side];
  return evidence.way === context.direction && sides.every((name) => stretchIsOver(context, name));
}

/** A stretch that draws so much more, as a part of its normal, wants a service: a guess, no source. */
const HIGH_STRETCH = 0.6;

/** What is said of `stretches` of the travel that draw more: at least one, the highest first. */
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
