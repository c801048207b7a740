import { median } from '../../statistics/median.ts';
import { quantile } from '../../statistics/quantile.ts';
import { firstAtOrAfter, type Interval } from '../signal/interval.ts';
import { outsideOf } from '../signal/outsideOf.ts';
import type { ActiveSide } from './activeSide.ts';
import { type Activity, commonRests } from './activity.ts';

/** So much before the switch was let go shows whether the motor stalled, seconds. */
const LAST_S = 0.4;
/** The level that most of them stay below is the stall's: it draws at least so many times the running current. */
const STALL_QUANTILE = 0.75;
const LEAST_STALL = 1.6;
/** A motor that stands draws at least this part of the stall before; one that is driven at all, this part. */
const STILL_STALLED = 0.75;
const DRIVEN = 0.1;
/** What a seal, rope or play gave back is taken up again before the motor stalls, seconds of each press. A guess, no source. */
const TAKING_UP_S = 0.6;

type PressedSide = Pick<ActiveSide, 'signal' | 'amps' | 'active'>;

/**
 * The sides without what was drawn after the room had met its stop: whoever wants to be sure presses once more, and the motors
 * stall at once. The stroke was over when they stalled first.
 */
export function withoutPressesAtStop<Side extends PressedSide>(sides: readonly Side[]): Side[] {
  const rests = commonRests(sides.map(({ active }) => active));
  const met = rests.find((rest, i) =>
    sides.every((side) => onlyStallsAfter(side, rest, TAKING_UP_S * (rests.length - i))),
  );
  if (met === undefined) return [...sides];
  return sides.map((side) => ({ ...side, active: endedAt(side.active, ownRest(side.active, met).fromS) }));
}

/** A side's own rest that the `common` one of all is part of: it may have been switched off sooner. */
function ownRest({ rests }: Activity, common: Interval): Interval {
  return rests.find(({ fromS, toS }) => fromS <= common.fromS && toS >= common.toS) ?? common;
}

/** `turningS`: so long the motor may still have turned. */
function onlyStallsAfter(
  { signal: { timesS, stepS }, amps, active }: PressedSide,
  common: Interval,
  turningS: number,
): boolean {
  const rest = ownRest(active, common);
  const between = (fromS: number, toS: number) =>
    amps.subarray(firstAtOrAfter(timesS, fromS), firstAtOrAfter(timesS, toS));
  const last = between(rest.fromS - LAST_S, rest.fromS);
  if (last.length === 0) return false;
  const stall = quantile(last, STALL_QUANTILE);
  // A start over slack rope draws next to nothing for a while, which is no stall: it is held against all of the stroke.
  const drivenTo = (toS: number) =>
    median(outsideOf(timesS, amps, { fromS: active.fromS, toS }, active.rests));
  const running = Math.max(drivenTo(rest.fromS), drivenTo(active.toS));
  if (!(stall >= LEAST_STALL * running)) return false;
  const turning = between(rest.toS, active.toS).reduce(
    (count, value) => (value > DRIVEN * stall && value < STILL_STALLED * stall ? count + 1 : count),
    0,
  );
  return turning * stepS <= turningS;
}

function endedAt(active: Activity, toS: number): Activity {
  return { fromS: active.fromS, toS, rests: active.rests.filter((rest) => rest.toS <= toS) };
}
