import { type Residual, SEASON_SPREADS } from '../../baseline/judge.ts';
import { median } from '../../statistics/median.ts';
import { LEAST_RUN } from '../charts/chartDesign.ts';
import { chartStep } from '../charts/chartStep.ts';
import { keepLatest } from '../charts/keepLatest.ts';
import { latestShift } from '../charts/shiftChart.ts';
import { type FindingContext, openOf } from '../finding.ts';
import { isPart } from '../isPart.ts';
import { mayBeThePlace } from '../stay.ts';
import { coldAllowance, followSeason, unseenWeather } from '../unseen.ts';
import { hasMoved } from './hasMoved.ts';
import { loadDesign, zeroLeft } from './loadDesign.ts';
import { latestOf } from './loadMemory.ts';
import { movementLoad } from './movementLoad.ts';
import { hasRisenOneWay, isAsEverBack, isBothWays, ONE_WAY } from './oneWayRise.ts';
import { updateShare } from './updateShare.ts';

/** A rise of the running current below 4.5 % is never a reason to call anybody, however quiet the room. Natural logarithm. */
const RISE = { kLeast: 0.045, hLeast: 0.11 };
/** More than the ground that a coach stands on does to the current: then one stay is enough to tell. */
const PLACE_RISE = 0.13;
/** The same where nobody recorded the temperature: a frost of some days does more. */
const FROST_RISE = 0.2;

/** How the load of a room stands after a stroke. */
export interface LoadShift {
  /** Median rise of the latest strokes by side, natural logarithm; only sides with a baseline. */
  readonly rises: ReadonlyMap<string, number>;
  /** Sides whose running current stands above its normal, by CUSUM. */
  readonly risen: readonly string[];
  /** Those of them that only the direction of this stroke feels. */
  readonly oneWay: readonly string[];
  /** The side that took load from the other, by CUSUM of the share; null: none. */
  readonly taker: string | null;
  /** Median move of the first side's share over the latest strokes. */
  readonly shareShift: number;
  /** One side fell while the other rose: the load moved rather than grew. */
  readonly moved: boolean;
  readonly deviation: number;
}

/** Takes one stroke into the load's memory and says how the load stands. Null while there is no baseline. */
export function updateLoad(context: FindingContext): LoadShift | null {
  const { state, analysis } = context;
  const memory = state.load;
  const part = isPart(context) ? movementLoad(context, memory.made) : null;
  memory.made = part?.made ?? null;
  if (part !== null) state.stay[part.whole === null ? 'parts' : 'joined'] += 1;
  if (part?.whole === null) return null;
  const residual = part?.whole ?? context.residual;
  const risen: string[] = [];
  const oneWay: string[] = [];
  const rises = new Map<string, number>();
  let deviation = 0;
  const allowance = coldAllowance(context);
  const coldOf = ({ knowsWeather }: Residual) => (knowsWeather ? null : allowance);
  const warmedOf = (judged: Residual) => judged.rise - (coldOf(judged) ?? 0);
  const judgedSides = state.room.sides.flatMap((side) => residual(side, 'runningAmps') ?? []);
  const seasonal = sharedOf(judgedSides.map(warmedOf));
  for (const side of state.room.sides) {
    const judged = residual(side, 'runningAmps');
    if (judged === null) continue;
    const load = memory.sides[side];
    const unseen = unseenWeather(judged, coldOf(judged));
    const zero = zeroLeft(state, [side], judged, (way) => latestOf(load, way));
    const { k, h } = loadDesign({ ...judged, zero }, RISE, unseen);
    const rise = warmedOf(judged) - load.season;
    if (load.sum < h / 2) load.season = followSeason(load.season, seasonal, SEASON_SPREADS * unseen);
    [load.sum, load.run] = chartStep(load.sum, load.run, Math.min(rise, k + h / 2), { k, h });
    load.deviation = judged.deviation;
    keepLatest(load.rises, rise);
    keepLatest(load.ways, context.direction);
    keepLatest(load.raw, judged.rise);
    rises.set(side, median(load.rises.slice(-Math.max(LEAST_RUN, Math.min(load.run, 6)))));
    deviation = Math.max(deviation, judged.deviation);
    const placeRise = context.conditions[1] === null ? FROST_RISE : PLACE_RISE;
    const strokes = state.stay.strokes - state.stay.parts;
    const isPlace = mayBeThePlace({ strokes }, load.run) && median(load.rises.slice(-load.run)) < placeRise;
    const isOffset = analysis.sides[side].offsetAmps === null && !isBothWays(state.usable, load);
    // A stroke that lies within its normal is no reason to call anybody, whatever those before it said.
    const isSo = rise > k && load.sum > h && load.run >= LEAST_RUN;
    const isOneWay = hasRisenOneWay(context, side, rise, loadDesign(judged, ONE_WAY, unseen));
    if ((isSo && !isPlace && !isOffset) || isOneWay) risen.push(side);
    if (isOneWay && isAsEverBack(load, context.direction)) {
      oneWay.push(side);
    }
  }
  if (rises.size === 0) return null;
  // The sides share the load of the last part otherwise than that of the way.
  const share = analysis.share === null || part !== null ? null : updateShare(context, memory);
  if (oneWay.length > 0 || share?.oneWay === true) {
    for (const side of rises.keys()) rises.set(side, median(latestOf(memory.sides[side], context.direction)));
  }
  const shareShift = latestShift(share?.oneWay ? memory.share.ways[context.direction] : memory.share.all);
  const moved = hasMoved(
    state.room.sides.flatMap((side) => rises.get(side) ?? latestRise(context, side) ?? []),
  );
  return { rises, risen, oneWay, taker: share?.taker ?? null, shareShift, moved, deviation };
}

/** What all of these have in common, as weather has on all sides of a room: the least of what they agree on, else nothing. */
function sharedOf(rises: readonly number[]): number {
  if (rises.length === 0) return 0;
  return Math.max(0, Math.min(...rises)) + Math.min(0, Math.max(...rises));
}

/**
 * How a side stood lately that this one stroke does not tell of: one that fell while the other rose may look like a sensor
 * that reads too little, until the next stroke says it is none. Null: nobody knows, or its sensor is in doubt for good.
 */
function latestRise({ state }: FindingContext, side: string): number | null {
  const { rises } = state.load.sides[side];
  const isDoubted = openOf(state, 'sensor-doubt').some((open) => open.side === side || open.side === null);
  return rises.length === 0 || isDoubted ? null : median(rises.slice(-LEAST_RUN));
}
