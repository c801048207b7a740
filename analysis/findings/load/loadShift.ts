import { median } from '../../statistics/median.ts';
import { LEAST_RUN } from '../charts/chartDesign.ts';
import { latestShift } from '../charts/shiftChart.ts';
import { type FindingContext, openOf } from '../finding.ts';
import { isPart } from '../isPart.ts';
import { hasMoved } from './hasMoved.ts';
import { latestOf } from './loadMemory.ts';
import { movementLoad } from './movementLoad.ts';
import { updateRises } from './updateRises.ts';
import { updateShare } from './updateShare.ts';

/** How the load of a room stands after a stroke. */
export interface LoadShift {
  /** Median rise of the latest strokes by side, natural logarithm; only sides with a baseline. */
  readonly rises: ReadonlyMap<string, number>;
  /** Sides whose running current stands above its normal by the CUSUM. */
  readonly risen: readonly string[];
  /** Those of them that have risen for longer than unrecorded weather lasts. */
  readonly lasting: readonly string[];
  /** Those of them that have risen in the direction of this stroke only. */
  readonly oneWay: readonly string[];
  /** The side that took load from the other, by the CUSUM of the share; null: none. */
  readonly taker: string | null;
  /** Median move of the first side's share over the latest strokes. */
  readonly shareShift: number;
  /**
   * How far each side stands off its normal since the share began to move, or else over its latest strokes, natural
   * logarithm. A side for which that is not known is left out.
   */
  readonly apart: readonly number[];
  /** One side fell while the other rose: the load moved rather than grew. */
  readonly moved: boolean;
  readonly deviation: number;
}

/**
 * Takes one stroke into the load's memory and answers how the load stands; null while there is no baseline, or a
 * movement is not whole.
 */
export function updateLoad(context: FindingContext): LoadShift | null {
  const { state, analysis, direction } = context;
  const memory = state.load;
  const part = isPart(context) ? movementLoad(context, memory.made) : null;
  memory.made = part?.made ?? null;
  if (part !== null) state.stay[part.whole === null ? 'parts' : 'joined'] += 1;
  if (part?.whole === null) return null;
  const sides = updateRises(context, part?.whole ?? context.residual);
  if (sides.length === 0) return null;
  // On the last part of a way the sides share the load otherwise than on the whole way.
  const share = analysis.share === null || part !== null ? null : updateShare(context, memory);
  const oneWay = sides.filter(({ isOneWay }) => isOneWay);
  const isOfWay = oneWay.length > 0 || share?.oneWay === true;
  const rises = new Map(
    sides.map(({ side, rise }) => [side, isOfWay ? median(latestOf(memory.sides[side], direction)) : rise]),
  );
  const apart =
    isOfWay || memory.moving < LEAST_RUN
      ? state.room.sides.flatMap((side) => rises.get(side) ?? latestRise(context, side) ?? [])
      : state.room.sides.map((side) => memory.sides[side].sinceMoving / memory.moving);
  return {
    rises,
    risen: sides.filter(({ hasRisen }) => hasRisen).map(({ side }) => side),
    lasting: sides.filter(({ lasts }) => lasts).map(({ side }) => side),
    oneWay: oneWay.map(({ side }) => side),
    taker: share?.taker ?? null,
    shareShift: latestShift(share?.oneWay ? memory.share.ways[direction] : memory.share.all),
    apart,
    moved: hasMoved(apart),
    deviation: Math.max(...sides.map(({ deviation }) => deviation)),
  };
}

/**
 * How a side stood on its latest strokes, for a stroke that does not tell. A side that fell while the other rose may
 * look like a sensor that reads too little, until the next stroke shows that it is none. Null where that is not known,
 * or where a warning says that its sensor is in doubt.
 */
function latestRise({ state }: FindingContext, side: string): number | null {
  const { rises } = state.load.sides[side];
  const isDoubted = openOf(state, 'sensor-doubt').some((open) => open.side === side || open.side === null);
  return rises.length === 0 || isDoubted ? null : median(rises.slice(-LEAST_RUN));
}
