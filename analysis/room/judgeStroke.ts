import { adjustedAsARule } from '../baseline/adjustedAsARule.ts';
import { coarseSpread } from '../baseline/coarseSteps.ts';
import { judgeMeasure, type Residual } from '../baseline/judge.ts';
import { unexplainedLag } from '../baseline/lagByLoad.ts';
import { toScale } from '../baseline/scale.ts';
import { unseenZero } from '../baseline/unseenZero.ts';
import { sideConditions } from '../findings/strokeConditions.ts';
import type { Expectation, StrokeEvent } from '../history.ts';
import { type DoneAnalysis, MEASURE_NAMES, type MeasureName, measureValue } from '../measures.ts';
import { channelOf, type RoomState } from '../roomState.ts';
import { isComparable } from './isComparable.ts';
import { hasMissedStart } from './missedStart.ts';

/** Every measure of every side of one stroke against its baseline. */
export interface JudgedStroke {
  readonly expectations: Expectation[];
  /** Null while learning, and where the stroke has no such measure or none that can be compared. */
  residual(side: string, measure: MeasureName): Residual | null;
}

/** Holds a stroke against the room's baselines, which it leaves as they are; after `noteStay`, which dates the copper. */
export function judgeStroke(state: RoomState, event: StrokeEvent, analysis: DoneAnalysis): JudgedStroke {
  const residuals = new Map<string, Map<MeasureName, Residual>>();
  const expectations: Expectation[] = [];
  for (const side of Object.keys(analysis.sides)) {
    const channel = channelOf(state, side, analysis.direction);
    if (channel === undefined) continue;
    const conditions = sideConditions(state, event, analysis, side);
    const ofSide = new Map<MeasureName, Residual>();
    residuals.set(side, ofSide);
    for (const measure of MEASURE_NAMES) {
      const value = measureValue(analysis, measure, side);
      if (value === null) continue;
      const zero = Math.hypot(
        unseenZero(analysis, side, measure, event.atMs - channel.learntAtMs),
        coarseSpread(analysis.sides[side], measure, value),
      );
      // In MEASURES the stall comes before the turns that are counted by it.
      const endStop = ofSide.get('endStopAmps') ?? null;
      const judged = isComparable({ state, analysis, channel }, measure, value, endStop)
        ? judgeMeasure(channel, {
            measure,
            value: toScale(measure, value),
            conditions,
            atMs: event.atMs,
            zero,
          })
        : null;
      if (judged !== null) ofSide.set(measure, judged);
      const isMissed = measure === 'inrushAmps' && hasMissedStart(analysis.sides[side], judged);
      const { expected = null, beyondOwn: beyond = null } = (isMissed ? null : judged) ?? {};
      const adjusted = judged?.adjusted ?? adjustedAsARule(measure, conditions, value);
      expectations.push({ side, measure, value, expected, adjusted, beyond });
    }
  }
  const residual: JudgedStroke['residual'] = (side, measure) => residuals.get(side)?.get(measure) ?? null;
  return { expectations: excuseLag(state, analysis, expectations, residual), residual };
}

/** A lag that the sides' load explains is not beyond its limits: the ground stands crooked, and that is said by the load. */
function excuseLag(
  state: RoomState,
  analysis: DoneAnalysis,
  expectations: Expectation[],
  residual: JudgedStroke['residual'],
): Expectation[] {
  const { sides } = state.room;
  if (sides.length !== 2 || sides.some((side) => analysis.sides[side] === undefined)) return expectations;
  const [first, last] = sides.map((side) => residual(side, 'runningAmps')?.residual ?? 0);
  const durationS = Math.max(...sides.map((side) => analysis.sides[side].durationS));
  return expectations.map((expectation) => {
    if (expectation.measure !== 'lagS' || expectation.beyond !== true) return expectation;
    const lag = residual(expectation.side, 'lagS');
    if (lag === null) return expectation;
    const left = unexplainedLag(lag.residual, last - first, durationS);
    return { ...expectation, beyond: Math.abs(left) > lag.ownLimit };
  });
}
