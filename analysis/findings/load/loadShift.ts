import { type Residual, SEASON_SPREADS } from '../../baseline/judge.ts';
import { LEARNING_STROKES } from '../../baseline/strokesNeeded.ts';
import type { RoomState } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import { DIRECTIONS, type Direction, otherWay } from '../../trace.ts';
import { H_SIGMAS, K_SIGMAS, LEAST_RUN, SHARED_SIGMAS } from '../charts/chartDesign.ts';
import { chartStep } from '../charts/chartStep.ts';
import { keepLatest } from '../charts/keepLatest.ts';
import {
  isOneWay,
  latestShift,
  restShifts,
  type ShiftDesign,
  takeShift,
  tellsFor,
} from '../charts/shiftChart.ts';
import type { ShiftChart } from '../charts/shiftMemory.ts';
import { type FindingContext, openOf } from '../finding.ts';
import { isPart } from '../isPart.ts';
import { tellsSign } from '../sensorDoubt/turnedSensor.ts';
import { mayBeThePlace } from '../stay.ts';
import { coldAllowance, followSeason, unseenWeather } from '../unseen.ts';
import { beginOneWay, type LoadMemory, type SideLoad } from './loadMemory.ts';
import { movementLoad } from './movementLoad.ts';

/**
 * Reference value and decision interval of the load's CUSUMs, in standard deviations of a healthy stroke and in
 * absolute terms, whichever is larger: a rise of the running current below 4.5 % and a move of the share below 2
 * points are never a reason to call anybody, however quiet the room.
 */
const RISE = { kLeast: 0.045, hLeast: 0.11 };
/**
 * The same for what only one direction feels, by the strokes of that direction alone: they are half as many, and a slope
 * that a coach stands on does less. Guesses, no source.
 */
const ONE_WAY = { kLeast: 0.15, hLeast: 0.11 };
/** The other direction is as ever: it fell by no more than this part of the rise. A guess, no source. */
const OTHER_WAY_FELL = 0.25;
const SHIFT = { kLeast: 0.02, hLeast: 0.09 };
/** More than the ground that a coach stands on does to the current and to the share: then one stay is enough to tell. */
const PLACE_RISE = 0.13;
/** The same where nobody recorded the temperature: a frost of some days does more. */
const FROST_RISE = 0.2;
const PLACE_SHIFT = 0.05;
/** A side counts as relieved when it fell by this part of what the other rose by. */
const RELIEVED = 0.35;

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
    const { k, h } = design({ ...judged, zero }, RISE, unseen);
    const rise = warmedOf(judged) - load.season;
    if (load.sum < h / 2) load.season = followSeason(load.season, seasonal, SEASON_SPREADS * unseen);
    [load.sum, load.run] = chartStep(load.sum, load.run, Math.min(rise, k + h / 2), k, h);
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
    const isOneWay = hasRisenOneWay(context, side, rise, design(judged, ONE_WAY, unseen));
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

/** `unseen`: what conditions that were not recorded may add to strokes in a row, on the measure's scale. */
function design(
  { noise, uncertainty, zero }: Residual,
  { kLeast, hLeast }: { readonly kLeast: number; readonly hLeast: number },
  unseen: number,
): { k: number; h: number } {
  const shared = Math.hypot(uncertainty, unseen);
  // What goes beyond the reference's own standard error is extrapolation: it counts twice.
  const extrapolated = Math.max(0, shared - noise / Math.sqrt(LEARNING_STROKES));
  const k = Math.max(K_SIGMAS * noise, kLeast) + SHARED_SIGMAS * Math.hypot(shared, zero) + extrapolated;
  return { k, h: Math.max(H_SIGMAS * noise, hLeast) };
}

/**
 * What a zero that no rest tells may have added, a standard deviation on the measure's scale. A sensor that reads with its
 * sign takes off one way what it adds the other: of what the latest strokes of both ways share, nothing.
 */
function zeroLeft(
  { signs }: RoomState,
  sides: readonly string[],
  { zero }: Residual,
  movesOf: (direction: Direction) => readonly number[],
): number {
  if (zero === 0 || !sides.every((side) => tellsSign(signs[side]))) return zero;
  const moves = DIRECTIONS.map((way) => movesOf(way).slice(-LEAST_RUN));
  if (moves.some(({ length }) => length < LEAST_RUN)) return zero;
  const [out, back] = moves.map(median);
  return Math.min(zero, Math.abs(out - back) / 2);
}

/**
 * Takes the stroke into the chart of its own direction, and tells whether the side draws more in that direction alone. Where
 * no rest tells the sensor's zero, a zero that jumped reads so too: then the strokes must take longer as well.
 */
function hasRisenOneWay(
  context: FindingContext,
  side: string,
  rise: number,
  { k, h }: { readonly k: number; readonly h: number },
): boolean {
  const { state, direction, analysis } = context;
  const load = state.load.sides[side];
  const own = load.oneWay[direction];
  [own.sum, own.run] = chartStep(own.sum, own.run, Math.min(rise, k + h / 2), k, h);
  if (!(rise > k && own.sum > h && own.run >= LEAST_RUN)) return false;
  const others = latestOf(load, otherWay(direction));
  if (others.length > 0 && median(others) < -OTHER_WAY_FELL * rise) return false;
  const slower = context.residual(side, 'durationS');
  const isSlower = slower !== null && slower.rise > slower.deviation;
  return analysis.sides[side].offsetAmps !== null || isSlower;
}

/** A rise of the way back by less than this part of the way's own is none of both. A guess, no source. */
const BOTH_WAYS = 0.3;

function isAsEverBack(load: SideLoad, direction: Direction): boolean {
  const others = latestOf(load, otherWay(direction));
  return others.length === 0 || median(others) < BOTH_WAYS * median(latestOf(load, direction));
}

/** The latest rises of one direction, oldest first. */
function latestOf(load: SideLoad, direction: Direction): number[] {
  return load.rises.filter((_, i) => load.ways[i] === direction);
}

/** Each direction's part of the rise is at least so much of the whole. */
const LEAST_EACH_WAY = 0.4;

/**
 * Whether the latest rise shows in both directions. A sensor whose zero jumped, in a record without any rest to tell
 * it by, reads more one way and less the other: a room that draws more does so both ways.
 */
function isBothWays(usable: Readonly<Record<Direction, number>>, load: SideLoad): boolean {
  const latest = load.rises.slice(-load.run);
  const least = LEAST_EACH_WAY * median(latest);
  return DIRECTIONS.every((direction) => {
    const own = latest.filter((_, i) => load.ways[load.ways.length - latest.length + i] === direction);
    return own.length > 0 ? median(own) >= least : usable[direction] === 0;
  });
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

/** Whether one of these sides fell while another rose, so that the load moved rather than grew. */
export function hasMoved(rises: readonly number[]): boolean {
  if (rises.length < 2) return false;
  const most = Math.max(...rises);
  const least = Math.min(...rises);
  return least < 0 && least < -RELIEVED * Math.max(0, most);
}

/** The side that took load from the other, and whether only this direction feels it; null: none did. */
function updateShare(
  context: FindingContext,
  { share }: LoadMemory,
): { readonly taker: string; readonly oneWay: boolean } | null {
  const { state, direction } = context;
  const { sides } = state.room;
  const judged = sides.length === 2 ? context.residual(sides[0], 'share') : null;
  if (judged === null) return null;
  const zero = zeroLeft(state, sides, judged, (way) => share.ways[way].shifts);
  const all = design({ ...judged, zero }, SHIFT, judged.unrecorded);
  const { k, h } = design(judged, SHIFT, judged.unrecorded);
  const ofWay = { k: k + SHIFT.kLeast, h };
  // Against the reference, not against a level that follows: a share that creeps is what is looked for.
  const move = judged.rise;
  takeShift(share, direction, move, all, ofWay);
  share.deviation = judged.deviation;
  const strokes = state.stay.strokes - state.stay.parts - state.stay.joined;
  const tells = (chart: ShiftChart, design: ShiftDesign) => {
    const run = tellsFor(chart, move, design);
    if (run === 0) return false;
    return !mayBeThePlace({ strokes }, run) || Math.abs(median(chart.shifts.slice(-run))) >= PLACE_SHIFT;
  };
  const taker = move > 0 ? sides[0] : sides[1];
  const oneWay = isOneWay(share, direction);
  if (oneWay && tells(share.ways[direction], ofWay)) return { taker, oneWay: true };
  return tells(share.all, all) ? { taker, oneWay: false } : null;
}

/** Forgets the sums, as after a service or when a warning is cleared. */
export function restLoad(memory: LoadMemory): void {
  for (const load of Object.values(memory.sides)) {
    load.sum = 0;
    load.run = 0;
    load.oneWay = beginOneWay();
    load.rises = [];
    load.ways = [];
    load.raw = [];
  }
  restShifts(memory.share);
}
