import { fromScale } from '../../baseline/scale.ts';
import { stallsAsEver } from '../../baseline/stallsAsEver.ts';
import { channelOf } from '../../roomState.ts';
import type { FindingContext } from '../finding.ts';

/** A zero that is off by less is noise, amperes. A guess, no source. */
const LEAST_AMPS = 0.2;
/** Running and stalled, a current reads less by twice the zero, within this part of it. */
const ALIKE = 0.3;
/** The stall moved by more than chance does: standard deviations of one stroke. */
const SIGMAS = 2;
/** A wrong zero slows nothing: natural logarithm, a guess. */
const SLOWED = 0.06;

/**
 * By how many amperes the zero of a sensor that tells no sign lies below nothing; null: nothing speaks for it. Such a sensor
 * reads the size of its zero at rest, which is then taken off where it should be added: a current that flows the positive
 * way seems to be less by twice as much, running and stalled alike. A load that is lost leaves the stall, which is V/R.
 */
export function foldedZero(context: FindingContext, side: string): number | null {
  const { state, analysis, direction, residual } = context;
  const { offsetAmps, runningAmps, endStopAmps, inrushAmps } = analysis.sides[side];
  if (offsetAmps === null || offsetAmps < LEAST_AMPS) return null;
  if (!stallsAsEver(channelOf(state, side, direction), analysis)) return null;
  const running = residual(side, 'runningAmps');
  const stall = residual(side, endStopAmps === null ? 'inrushAmps' : 'endStopAmps');
  const duration = residual(side, 'durationS');
  if (running === null || stall === null || duration === null || duration.rise > SLOWED) return null;
  const readsLess = (amps: number, rise: number) => {
    const usual = fromScale('runningAmps', Math.log(amps) - rise);
    return Math.abs(usual - amps - 2 * offsetAmps) < 2 * ALIKE * offsetAmps;
  };
  const isSeen = stall.rise < -SIGMAS * stall.deviation;
  const isFolded =
    isSeen && readsLess(runningAmps, running.rise) && readsLess(endStopAmps ?? inrushAmps, stall.rise);
  return isFolded ? -offsetAmps : null;
}
