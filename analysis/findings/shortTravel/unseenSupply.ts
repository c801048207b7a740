import type { FindingContext } from '../finding.ts';
import { MOST_STALL_SPREAD } from '../unseen.ts';
import { isLetGo } from './stallHeld.ts';

/** A supply falls by no more than this from one stay to the next, natural logarithm: a guess, no source. */
const MOST_WEAKER = 0.15;

/** How much stronger a supply was than expected, natural logarithm, below 0: weaker; and how far off that may be, a standard deviation. */
export interface UnseenSupply {
  readonly stronger: number;
  readonly deviation: number;
}

const AS_EXPECTED: UnseenSupply = { stronger: 0, deviation: 0 };

/**
 * A supply that nobody recorded, as the stall current shows it: the stroke was faster by as much, not shorter. A weaker one is
 * believed only where the temperature is known, and tells that a stroke which took no longer on it was shorter. As expected where
 * the supply was recorded, no stall was read, or the stall tells of no weaker supply: it was let go before the motor stood still,
 * or is let go now sooner and now later.
 */
export function unseenSupply(context: FindingContext): UnseenSupply {
  const { state, analysis, direction, conditions, residual } = context;
  const stalls = state.room.sides.flatMap((side) => {
    const judged = residual(side, 'endStopAmps');
    return judged === null ? [] : [{ side, judged }];
  });
  if (analysis.supplyVolts !== null || stalls.length === 0) return AS_EXPECTED;
  const { side, judged } = stalls.reduce((a, b) => (b.judged.rise > a.judged.rise ? b : a));
  if (judged.rise >= 0) return { stronger: judged.rise, deviation: 0 };
  const knowsWeather = conditions[1] !== null;
  const isSteady = judged.deviation <= MOST_STALL_SPREAD;
  if (!knowsWeather || !isSteady || isLetGo(state.travel[direction], analysis, side, judged))
    return AS_EXPECTED;
  return { stronger: Math.max(-MOST_WEAKER, judged.rise), deviation: judged.deviation };
}

/**
 * How much weaker the supply may have been at the most, natural logarithm: no more than the current at standstill tells, at the
 * start or at the stop, on the side that lost least of it.
 */
export function mostWeaker({ state, residual }: FindingContext): number {
  const fell = state.room.sides.flatMap((side) =>
    [residual(side, 'endStopAmps'), residual(side, 'inrushAmps')]
      .filter((standstill) => standstill !== null)
      .map(({ rise, deviation }) => Math.max(0, -rise) + deviation),
  );
  return Math.min(MOST_WEAKER, ...fell);
}
