import { median } from '../../statistics/median.ts';
import { afterRamp } from './endOfRamp.ts';
import {
  differenceNoise,
  FAR_AMPS,
  HIGH_PART,
  isFlat,
  isLong,
  LONGEST_HIGH_PART,
  MOST_REST_TIMES,
  type Rest,
  type RestSearch,
  SHORTEST_REST_S,
} from './rests.ts';
import { beforeStep, beginsWithStart, isRagged } from './startAtEdge.ts';
import { afterStep, mayBeLightRunning } from './switchedOff.ts';

/** Shorter rests at the edges of a record say nothing of the sensor's offset, unless both say the same. */
const SHORTEST_LONE_REST_S = 0.3;
const AGREEING_PART = 0.08;
const SHORTEST_HIGH_REST_S = 0.8;
const SHORTEST_AGREED_HIGH_REST_S = 0.3;
/** A sensor so noisy, as a part of what the motor draws, throws single samples of its rest over any threshold. */
const NOISY_PART = 0.12;
const NOISE_SIGMAS = 4;

/** A rest that ends sooner may have ended in the noise. */
const LONG_REST_S = 0.5;

/** The readings at one end of a record that may be a rest. */
interface Edge {
  readonly amps: Float64Array;
  /** Their median, amperes; NaN: there are none. */
  readonly level: number;
}

/** Both ends of a record beside each other. */
interface Edges {
  readonly first: Edge;
  readonly last: Edge;
  /** Whether both say the same. */
  readonly alike: boolean;
  /** Whether they differ by so much that the higher one is no rest. */
  readonly apart: boolean;
  /** Whether most of what lies between them is as low: then peaks stand out of what the motor draws, and not the drive out of a rest. */
  readonly goesOn: boolean;
}

/** The rest at the edges, also of a record whose noise is large beside its current; null: there is none. */
export function edgeRest(search: RestSearch): Rest | null {
  const { signal, threshold, rough } = search;
  const quiet = restBelow(search, threshold);
  if (quiet !== null && quiet.rest.length * signal.stepS > LONG_REST_S) return quiet;
  const noise = differenceNoise(signal.amps);
  if (noise < NOISY_PART * rough) return quiet;
  return restBelow(search, threshold + NOISE_SIGMAS * noise) ?? quiet;
}

/** `highest`: what each sample of the rest stays below, amperes. */
function restBelow(search: RestSearch, highest: number): Rest | null {
  const { timesS } = search.signal;
  const edges = edgesOf(search, highest);
  const isRest = (edge: Edge) => countsAsRest(search, edges, edge);
  const first = isRest(edges.first) && !isStart(search, edges.first) ? edges.first.amps : NONE;
  const runs = !edges.alike && mayBeLightRunning(search, edges.last.amps);
  const last = isRest(edges.last) && !runs ? edges.last.amps : NONE;
  if (first.length + last.length === 0) return null;
  const rest = new Float64Array(first.length + last.length);
  rest.set(first);
  rest.set(last, first.length);
  return { rest, stood: first.length > 0 ? { fromS: timesS[0], toS: timesS[first.length] } : null };
}

const NONE = new Float64Array(0);

function isStart({ signal, rough }: RestSearch, { amps }: Edge): boolean {
  return beginsWithStart(signal, amps, rough) || isRagged(signal, amps, rough);
}

function edgesOf({ signal, smooth, threshold, rough }: RestSearch, highest: number): Edges {
  const n = smooth.length;
  const isLow = (i: number) => smooth[i] < threshold && signal.amps[i] < highest;
  let head = 0;
  while (head < n && isLow(head)) head++;
  let tail = 0;
  while (tail < n - head && isLow(n - 1 - tail)) tail++;
  let low = 0;
  for (let i = head; i < n - tail; i++) low += Number(smooth[i] < threshold);
  const goesOn = low > LONGEST_HIGH_PART * (n - tail - head);
  // The samples next to the motion may hold part of it.
  const first = edgeOf(beforeStep(signal.amps.subarray(0, Math.max(0, head - 1)), rough));
  const last = edgeOf(afterRamp(signal, afterStep(signal.amps.subarray(Math.min(n, n - tail + 1)), rough)));
  const apartAmps = Math.abs(first.level - last.level);
  const alike = apartAmps < AGREEING_PART * Math.abs(rough);
  const [lower, higher] = first.level > last.level ? [last, first] : [first, last];
  // A clamp has one zero: of two edges that differ by much, the higher one is a motor that runs while the stall is long.
  const runs = !isFlat(higher.amps) || higher.amps.length > LONGEST_HIGH_PART * n;
  const apart =
    [lower, higher].every(({ amps }) => isLong(signal, amps, SHORTEST_REST_S)) &&
    (apartAmps > HIGH_PART * (rough - higher.level) || (!alike && runs));
  return { first, last, alike, apart, goesOn };
}

function edgeOf(amps: Float64Array): Edge {
  return { amps, level: median(amps) };
}

/** Whether one of the edges lasts long enough to be a rest, for how high it lies and what the other one says. */
function countsAsRest({ signal, smooth, rough }: RestSearch, edges: Edges, edge: Edge): boolean {
  const { first, last, alike, apart, goesOn } = edges;
  const { amps, level } = edge;
  if (apart && level > Math.min(first.level, last.level)) return false;
  if (level > MOST_REST_TIMES * (rough - level)) return false;
  const isHigh = level > HIGH_PART * (rough - level);
  const isFar = Math.abs(level) > FAR_AMPS && !alike;
  if ((isHigh || isFar) && (goesOn || amps.length > LONGEST_HIGH_PART * smooth.length)) return false;
  const aloneS = isHigh ? SHORTEST_HIGH_REST_S : SHORTEST_LONE_REST_S;
  const agreedS = isHigh ? SHORTEST_AGREED_HIGH_REST_S : SHORTEST_REST_S;
  const agree = alike && [first, last].every((each) => isLong(signal, each.amps, agreedS));
  return isLong(signal, amps, agree ? agreedS : aloneS);
}
