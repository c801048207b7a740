import { median, medianInPlace } from '../../statistics/median.ts';
import { presentAsTheyAre } from '../../statistics/select.ts';
import { type Direction, otherWay, type RoomDescription, type StrokeTrace } from '../../trace.ts';
import { everyOther, longRest } from '../rest/longRest.ts';
import { FAR_AMPS } from '../rest/rests.ts';
import { withoutBraking } from '../signal/brakingSwing.ts';

/**
 * The direction told by the sign of the current: positive drives the room in its `positiveDirection`. Null where the
 * sign cannot be told, as when the sides disagree or nothing flowed. A side that draws little beside another
 * has no say: the noise of a clamp that was left off has a sign as well.
 *
 * A side's sign is that of the median of its samples above three tenths of its largest magnitude about its middle.
 */
export function directionBySign(
  trace: Pick<StrokeTrace, 'sides'>,
  room: Pick<RoomDescription, 'positiveDirection'>,
): Direction | null {
  const drawn = trace.sides.map((side) => drawnBy(withoutBraking(side).amps));
  const most = Math.max(...drawn.map(({ meanAmps }) => Math.abs(meanAmps)));
  const told = drawn.filter(({ meanAmps }) => Math.abs(meanAmps) >= TELLING_PART * most);
  const signs = told.map(({ sign }) => sign).filter((sign) => sign !== 0);
  if (signs.length === 0 || signs.some((sign) => sign !== signs[0])) return null;
  const other = otherWay(room.positiveDirection);
  return signs[0] > 0 ? room.positiveDirection : other;
}

/** What draws less than this part of the other may be a zero that is off. A guess, no source. */
const TELLING_PART = 0.25;

/** What is driven lies beyond this part of the largest reading about the rest. */
const STRONG_PART = 0.3;
/** A sensor's rest cannot be further from zero than this part of the largest reading, or it is no rest. */
const MOST_REST_PART = 0.5;
const EDGE_PART = 0.01;
const FEWEST_AT_EDGE = 3;
/** Both edges agree within this part of the largest reading, in a record of so many edges at least. */
const AGREEING_PART = 0.1;
const FEWEST_EDGES = 4;
/** Nor does what is read at one edge change by more than this part of it: that is a start, or a motor let down. */
const LEVEL_PART = 0.2;
/** Edges this close to the usual level, as a part of it, are the running motor. */
const RUNNING_PART = 0.3;
const USUAL_STRIDE = 8;

/** +1 or -1 for the way the motor was driven, 0 where nothing flowed. `amps` may hold NaN. */
export function signOf(amps: Float64Array): 1 | -1 | 0 {
  return drawnBy(amps).sign;
}

/** As `signOf`, with the mean of all readings about the rest, amperes: noise has next to none. */
function drawnBy(amps: Float64Array): { sign: 1 | -1 | 0; meanAmps: number } {
  const read = presentAsTheyAre(amps);
  const rest = longRest(read)?.level ?? restOf(read);
  // The median of the strong ones lies on the side of the more, and between the innermost two of as many.
  const reach = STRONG_PART * furthestFrom(rest, read);
  let more = 0;
  let above = Number.POSITIVE_INFINITY;
  let below = Number.NEGATIVE_INFINITY;
  let sum = 0;
  for (let i = 0; i < read.length; i++) {
    const value = read[i];
    const from = value - rest;
    sum += from;
    if (from > reach) {
      more++;
      if (value < above) above = value;
    } else if (from < -reach) {
      more--;
      if (value > below) below = value;
    }
  }
  const meanAmps = read.length === 0 ? 0 : sum / read.length;
  if (more !== 0) return { sign: more > 0 ? 1 : -1, meanAmps };
  if (above === Number.POSITIVE_INFINITY) return { sign: 0, meanAmps };
  const middle = below + (above - below) / 2 - rest;
  return { sign: middle === 0 ? 0 : middle > 0 ? 1 : -1, meanAmps };
}

/** What the sensor reads at both edges of the record, where they agree and can be a rest; else 0. */
function restOf(read: Float64Array): number {
  const count = Math.max(FEWEST_AT_EDGE, Math.round(EDGE_PART * read.length));
  if (read.length < FEWEST_EDGES * count) return 0;
  const edges = [read.subarray(0, count), read.subarray(-count)];
  const [head, tail] = edges.map(median);
  const largest = furthestFrom(0, read);
  const agree = Math.abs(head - tail) <= AGREEING_PART * largest;
  const usual = medianInPlace(everyOther(read, USUAL_STRIDE));
  const near = Math.max(Math.abs(head), Math.abs(tail)) <= Math.max(FAR_AMPS, MOST_REST_PART * largest);
  const isLevel = edges.every((edge) => changeWithin(edge) <= LEVEL_PART * largest);
  const rest = (head + tail) / 2;
  // A record without any rest begins and ends at the level that it holds most of the time.
  const running = Math.abs(usual - rest) < RUNNING_PART * Math.abs(rest);
  // One that begins in a start and ends in a stall does so above that level.
  const driven = Math.abs(rest) > FAR_AMPS && rest * usual > 0 && Math.abs(rest) > Math.abs(usual);
  return agree && near && isLevel && !running && !driven ? rest : 0;
}

/** By how much the two halves of a few readings differ. */
function changeWithin(readings: Float64Array): number {
  const half = Math.ceil(readings.length / 2);
  return Math.abs(median(readings.subarray(0, half)) - median(readings.subarray(-half)));
}

/** How far a reading lies from a level at most. */
function furthestFrom(level: number, read: Float64Array): number {
  let furthest = 0;
  for (let i = 0; i < read.length; i++) {
    const away = Math.abs(read[i] - level);
    if (away > furthest) furthest = away;
  }
  return furthest;
}
