import { type LentNormal, lend, restartLending } from '../baseline/lending.ts';
import { toScale } from '../baseline/scale.ts';
import { isHeavyAlone } from '../findings/heavyRoom/heavyRatio.ts';
import { cutsPeaksAlone, READ_OFF_PEAKS } from '../findings/sensorDoubt/cutsPeaksAlone.ts';
import { conditionsOf } from '../findings/strokeConditions.ts';
import { isWeak } from '../findings/weakSupply.ts';
import type { StrokeEvent } from '../history.ts';
import { type DoneAnalysis, MEASURE_NAMES, measureValue } from '../measures.ts';
import type { RoomState } from '../roomState.ts';
import { lagAtStops } from '../stroke/lag.ts';
import type { Direction } from '../trace.ts';
import { doubtfulSides } from './context.ts';

/**
 * Lets a usable stroke count towards what the room lends to others. Which strokes do follows from the strokes alone and
 * from no baseline: a baseline may be borrowed, and what was borrowed must not be lent on. A room that is heavy by its rating or
 * its drive has nothing to say of what its model should need.
 */
export function lendStroke(state: RoomState, event: StrokeEvent, analysis: DoneAnalysis): void {
  if (isWeak({ state, analysis })) return;
  const doubtful = doubtfulSides(analysis, state.room.sides);
  const isHeavy = isHeavyAlone(state);
  for (const lending of state.lending) {
    if (lending.direction !== analysis.direction || doubtful.has(lending.side)) continue;
    if (analysis.sides[lending.side] === undefined) continue;
    const values = isHeavy ? MEASURE_NAMES.map(() => null) : scaledValues(analysis, lending.side);
    lend(lending, conditionsOf(state, event, analysis), event.atMs, values);
  }
}

/** Every measure of one side on its baseline's scale, by index of MEASURES; null where the stroke has none. */
function scaledValues(analysis: DoneAnalysis, side: string): (number | null)[] {
  const isCut = cutsPeaksAlone(analysis, side);
  return MEASURE_NAMES.map((measure) => {
    if (isCut && READ_OFF_PEAKS.has(measure)) return null;
    const value = measure === 'lagS' ? lagAtStops(analysis) : measureValue(analysis, measure, side);
    return value === null ? null : toScale(measure, value);
  });
}

/** After work that changed a side's mechanism (null: every side's) what it was is not what it will lend. */
export function lendNoMore(state: RoomState, side: string | null): void {
  for (const lending of state.lending) if (side === null || lending.side === side) restartLending(lending);
}

/** What a room lends, in the order of its channels; null: it has not learnt that yet. */
export function lentByRoom(
  state: RoomState,
): { side: string; direction: Direction; normal: LentNormal | null }[] {
  return state.lending.map(({ side, direction, normal }) => ({ side, direction, normal }));
}
