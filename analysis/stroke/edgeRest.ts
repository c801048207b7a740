import { median } from '../statistics/median.ts';
import { medianAbsoluteDeviation } from '../statistics/medianAbsoluteDeviation.ts';
import {
  differenceNoise,
  HIGH_PART,
  isFlat,
  isLong,
  LONGEST_HIGH_PART,
  MOST_REST_TIMES,
  type Rest,
  SHORTEST_REST_S,
} from './rests.ts';
import type { SideSignal } from './sideSignal.ts';

/** Shorter rests at the edges of a record say nothing of the sensor's offset, unless both say the same. */
const SHORTEST_LONE_REST_S = 0.3;
const AGREEING_PART = 0.08;
const SHORTEST_HIGH_REST_S = 0.8;
const SHORTEST_AGREED_HIGH_REST_S = 0.3;
/** A level so far from nothing, amperes, that most of a record is at, and only one end of it, is no rest: a guess, no source. */
const FAR_AMPS = 2.5;
/** A record that begins with a start: its first moments stand so far above what follows, in parts of either. */
const START_S = 0.35;
const FEWEST_START_SAMPLES = 4;
const START_NOISES = 8;
const START_PART = 0.04;
/** A sensor so noisy, as a part of what the motor draws, throws single samples of its rest over any threshold. */
const NOISY_PART = 0.12;
const NOISE_SIGMAS = 4;

/** A rest that ends sooner may have ended in the noise. */
const LONG_REST_S = 0.5;

/** The rest at the edges, also of a record whose noise is large beside its current. */
export function steadyRest(
  signal: SideSignal,
  smooth: Float64Array,
  threshold: number,
  rough: number,
): Rest | null {
  const quiet = edgeRest(signal, smooth, threshold, threshold, rough);
  if (quiet !== null && quiet.rest.length * signal.stepS > LONG_REST_S) return quiet;
  const noise = differenceNoise(signal.amps);
  if (noise < NOISY_PART * rough) return quiet;
  return edgeRest(signal, smooth, threshold, threshold + NOISE_SIGMAS * noise, rough) ?? quiet;
}

/** `threshold`: what the smoothed rest stays below; `highest`: what each of its samples does. */
function edgeRest(
  signal: SideSignal,
  smooth: Float64Array,
  threshold: number,
  highest: number,
  rough: number,
): Rest | null {
  const n = smooth.length;
  let head = 0;
  while (head < n && smooth[head] < threshold && signal.amps[head] < highest) head++;
  let tail = 0;
  while (tail < n - head && smooth[n - 1 - tail] < threshold && signal.amps[n - 1 - tail] < highest) tail++;
  // The samples next to the motion may hold part of it.
  const edges = [
    firstLevel(signal.amps.subarray(0, Math.max(0, head - 1)), rough),
    signal.amps.subarray(Math.min(n, n - tail + 1)),
  ];
  const alike = Math.abs(median(edges[0]) - median(edges[1])) < AGREEING_PART * Math.abs(rough);
  // A clamp has one zero: of two edges that differ by much, the higher one is a motor that runs while the stall is long.
  const apart =
    edges.every((edge) => isLong(signal, edge, SHORTEST_REST_S)) &&
    (areApart(edges, rough) || (!alike && !isFlat(higherOf(edges))));
  const agreeFor = (seconds: number) => alike && edges.every((edge) => isLong(signal, edge, seconds));
  const [first, last] = edges.map((edge, i) => {
    if (apart && median(edge) > median(edges[1 - i])) return edge.subarray(0, 0);
    if (i === 0 && (beginsWithStart(signal, edge, rough) || isRagged(signal, edge, rough)))
      return edge.subarray(0, 0);
    const isHigh = edge.length > 0 && median(edge) > HIGH_PART * (rough - median(edge));
    const isFar = Math.abs(median(edge)) > FAR_AMPS && !alike;
    if ((isHigh || isFar) && edge.length > LONGEST_HIGH_PART * n) return edge.subarray(0, 0);
    const loneS = isHigh ? SHORTEST_HIGH_REST_S : SHORTEST_LONE_REST_S;
    const agreedS = isHigh ? SHORTEST_AGREED_HIGH_REST_S : SHORTEST_REST_S;
    const neededS = agreeFor(agreedS) ? agreedS : loneS;
    if (edge.length > 0 && median(edge) > MOST_REST_TIMES * (rough - median(edge)))
      return edge.subarray(0, 0);
    return isLong(signal, edge, neededS) ? edge : edge.subarray(0, 0);
  });
  if (first.length + last.length === 0) return null;
  const rest = new Float64Array(first.length + last.length);
  rest.set(first);
  rest.set(last, first.length);
  const stood = first.length > 0 ? { fromS: signal.timesS[0], toS: signal.timesS[first.length] } : null;
  return { rest, stood };
}

/** A start that a controller makes soft stands on a level of its own first, higher by this part of what the motor draws. */
const STEP_PART = 0.15;
/** So many samples that stand higher, all that follow them too, are another level. */
const FEWEST_STEPPED = 2;

/** What comes before the edge of a record steps up to another level, where it does: a rest has one. */
function firstLevel(edge: Float64Array, rough: number): Float64Array {
  let highFrom = edge.length;
  const level = median(edge.subarray(0, Math.ceil(edge.length / 4)));
  while (highFrom > 0 && edge[highFrom - 1] - level > STEP_PART * (rough - level)) highFrom--;
  return edge.length - highFrom < FEWEST_STEPPED ? edge : edge.subarray(0, Math.max(0, highFrom - 1));
}

function higherOf([first, last]: Float64Array[]): Float64Array {
  return median(first) > median(last) ? first : last;
}

function areApart([first, last]: Float64Array[], rough: number): boolean {
  return Math.abs(median(first) - median(last)) > HIGH_PART * (rough - Math.max(median(first), median(last)));
}

/** Whether an edge begins with a motor's start, which no rest does: what follows is its running current. */
function beginsWithStart(signal: SideSignal, edge: Float64Array, rough: number): boolean {
  if (edge.length < FEWEST_START_SAMPLES) return false;
  const level = median(edge);
  let highest = -Infinity;
  const start = Math.max(1, Math.ceil(START_S / signal.stepS));
  for (let i = 0; i < Math.min(start, edge.length); i++) highest = Math.max(highest, edge[i]);
  const clear = Math.max(START_NOISES * medianAbsoluteDeviation(edge), START_PART * (rough - level));
  return highest - level > clear;
}

/** A short edge whose readings differ by so much, in parts of what the motor draws and in the sensor's own noises. */
const RAGGED_S = 0.8;
const RAGGED_PART = 0.15;
const RAGGED_NOISES = 10;

/**
 * Whether a short edge is the first of a start that a controller lets rise slowly, over a slow logger's few samples, rather than
 * a rest. Its last sample may hold part of the start after a rest, too.
 */
function isRagged(signal: SideSignal, edge: Float64Array, rough: number): boolean {
  const before = edge.subarray(0, Math.max(0, edge.length - 1));
  if (before.length < 2 || edge.length * signal.stepS > RAGGED_S) return false;
  const range = Math.max(...before) - Math.min(...before);
  // The noise of the whole record only where the range asks for it: it is the dearest part of a look at an edge.
  return (
    range > RAGGED_PART * (rough - median(before)) && range > RAGGED_NOISES * differenceNoise(signal.amps)
  );
}
