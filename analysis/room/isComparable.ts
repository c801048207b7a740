import type { Channel } from '../baseline/channel.ts';
import { isTooCoarse } from '../baseline/coarseSteps.ts';
import type { Residual } from '../baseline/judge.ts';
import { isSameRecording, READ_OFF_STALL } from '../baseline/samplingRate.ts';
import { cutsPeaksAlone, READ_OFF_PEAKS } from '../findings/sensorDoubt/cutsPeaksAlone.ts';
import { areBrief, isLetGo } from '../findings/shortTravel/stallHeld.ts';
import type { DoneAnalysis, MeasureName } from '../measures.ts';
import type { RoomState } from '../roomState.ts';
import { lagAtStops } from '../stroke/lag.ts';

/** One side of one stroke, and the baseline that it is held against. */
export interface SideOfStroke {
  readonly state: RoomState;
  readonly analysis: DoneAnalysis;
  readonly channel: Channel;
}

/** What is summed up to the end of a stroke, the stall included, or counted by the stall. */
const HOLDS_STALL: ReadonlySet<MeasureName> = new Set(['chargeAs', 'energyJ', 'turnsAs']);
/** A direction whose strokes end in a stall at least this often has its normal of strokes with one. */
const STALLS_AS_A_RULE = 0.5;

/**
 * Whether a measure of this stroke can be held against its baseline: a charge with the stall in it is none without,
 * nor are turns that were counted by it, nor by one that was let go too soon; what is read off single samples depends
 * on their rate, and what is read off peaks on how far the sensor reads; sides that were switched off together show no
 * lag at their stops; a spread within a step or two of the sensor is not measured. `endStop`: this stroke's stall
 * against its baseline, null where there is none.
 */
export function isComparable(
  { state, analysis, channel }: SideOfStroke,
  measure: MeasureName,
  value: number,
  endStop: Residual | null,
): boolean {
  const measured = analysis.sides[channel.side];
  if (isTooCoarse(measured, measure, value)) return false;
  if (READ_OFF_PEAKS.has(measure) && cutsPeaksAlone(analysis, channel.side)) return false;
  if (measure === 'lagS' && lagAtStops(analysis) === null) return false;
  const { endStopAmps, rateHz = null } = measured;
  const travel = state.travel[analysis.direction];
  const stallsUsually = travel.stopRate === null ? null : travel.stopRate >= STALLS_AS_A_RULE;
  if (HOLDS_STALL.has(measure) && stallsUsually !== null && stallsUsually !== (endStopAmps !== null))
    return false;
  if (measure === 'turnsAs' && isLetGo(travel, analysis, channel.side, endStop)) return false;
  // What one or two samples say of a stall is left to chance, though the first strokes may happen to agree.
  if (READ_OFF_STALL.has(measure) && rateHz !== null && areBrief(travel, channel.side, rateHz)) return false;
  return isSameRecording(channel, measure, rateHz, hasBriefStalls(state, channel, rateHz));
}

/** Whether a stroke's rate is another than the reference's, and the slower of both is too slow for this side's stalls. */
export function hasBriefStalls({ travel }: RoomState, channel: Channel, rateHz: number | null): boolean {
  const { rateHz: known, side, direction } = channel;
  if (rateHz === null || known === null || rateHz === known) return false;
  return areBrief(travel[direction], side, Math.min(rateHz, known));
}
