import type { MeasureName } from '../measures.ts';
import { ReusedArray } from '../statistics/reusedArray.ts';
import { studentTUpperTail } from '../statistics/studentT.ts';
import { BEYOND_PROBABILITY, beyondQuantile } from './beyondQuantile.ts';

/**
 * What a channel's own strokes have told of the single-stroke limits of one measure. The `limit` of a `Residual` is set
 * beforehand, for strokes that differ as much as real ones may: in a room whose strokes are more alike not one in
 * thousands lies beyond it.
 */
export interface OwnLimit {
  /**
   * How many strokes had a residual of which part of that limit: one count for each of CLASSES, and one for what is
   * larger.
   */
  readonly counts: readonly number[];
  /** The room's own limit as a multiple of that limit: about one healthy stroke in 400 lies beyond it. */
  readonly factor: number;
  /** The room's own limit on its latest strokes, on the measure's scale: a moving mean; null: no stroke was judged. */
  readonly usual: number | null;
  /** Whether the latest stroke lay beyond that limit. */
  readonly wasBeyond: boolean;
}

/** Upper ends of the classes, as parts of the limit. */
const CLASSES = [0.03, 0.06, 0.12, 0.2, 0.3, 0.42, 0.6, 0.8, 1, 1.3, 1.7, 2.2];
/** A stroke beyond this many times the limit is no usual one and does not count. A guess, no source. */
const FAR = 3;
/**
 * A stroke beyond the room's own limit counts as this many times that limit, however far it lies (P. J. Huber, 1981,
 * Robust Statistics). The number is a guess.
 */
const JUST_BEYOND = 1.15;
/**
 * Once this many strokes are counted all counts are halved, so that the latest years weigh most. A guess, no source.
 */
const MOST_COUNTED = 400;
/**
 * From this many strokes on one more changes little: the limit, which takes a while to find, is found anew with each
 * fourth only.
 */
const FEW = 24;
const SELDOM = 4;
/** The moving mean of the limit spans about four strokes. A guess, no source. */
const USUAL_PART = 0.25;

/**
 * The kinds of strokes that a room may have, and how likely each is beforehand. `SPREADS`: how widely its strokes
 * spread, as a part of what the limit was set for: some three quarters, as a rule no less than half and no more than
 * all. `DEGREES`: the degrees of freedom of their tails, near the normal distribution more often than not, and now and
 * then as fat as the test rig's. The plain measures (what the winding tells, the shares of the sides) seldom have fat
 * tails; those that friction, weather and the ground move have them more often. Guesses, from simulated rooms of many
 * makes.
 */
const SPREADS = { least: 0.15, most: 2, count: 16, usual: 0.74, logSpread: 0.35 };
const DEGREES = [2.5, 4, 8, 30, 300];
const LIKELY = { usual: [0.1, 0.1, 0.3, 0.5, 0], plain: [0.02, 0.04, 0.14, 0.3, 0.5] };
type Tails = keyof typeof LIKELY;
const PLAIN: ReadonlySet<MeasureName> = new Set(['inrushAmps', 'endStopAmps', 'share', 'roughness']);
/**
 * The weight of a stroke. Strokes of one stay are alike, so that ten tell as much as seven of different stays. A guess,
 * no source.
 */
const WEIGHT = 0.7;
/**
 * The factors that are tried. Whatever its strokes tell, a room's limits become neither narrower than the least nor
 * wider than they were set beforehand, or a slow fault would widen them before it is found. The peak of a start is the
 * exception: no slow fault moves it, and where samples are far apart some strokes of a room show it and some do not.
 */
const FACTORS = { least: 0.2, most: 3, count: 55 };
const MOST_FACTOR: Readonly<Partial<Record<MeasureName, number>>> = { inrushAmps: FACTORS.most };

/** Nothing is known yet of this measure's strokes. */
export function beginOwnLimit(measure: MeasureName): OwnLimit {
  const counts = Array.from({ length: CLASSES.length + 1 }, () => 0);
  return { counts, factor: factorOf(counts, measure), usual: null, wasBeyond: false };
}

/** For a new normal: it has other limits, but its strokes are taken to lie within them as before. */
export function withNewNormal(own: OwnLimit): OwnLimit {
  return { ...own, usual: null };
}

/** How many strokes the limit is known from, older ones counted for less. */
export function strokesTold({ counts }: Pick<OwnLimit, 'counts'>): number {
  return counts.reduce((sum, count) => sum + count, 0);
}

/**
 * Takes in one more healthy stroke. Odd strokes come alone: one beyond the limit right after another may be a fault
 * that has begun. It does not count, or the fault would widen the limits that it is measured against.
 */
export function noteResidual(
  own: OwnLimit,
  {
    measure,
    residual,
    limit,
    ownLimit,
  }: { measure: MeasureName; residual: number; limit: number; ownLimit: number },
): OwnLimit {
  const part = Math.abs(residual) / limit;
  const isBeyond = part > 1;
  const usual = own.usual === null ? ownLimit : own.usual + USUAL_PART * (ownLimit - own.usual);
  if (part > FAR || (isBeyond && own.wasBeyond)) return { ...own, usual, wasBeyond: isBeyond };
  const place = CLASSES.filter((end) => Math.min(part, JUST_BEYOND * own.factor) > end).length;
  const counts = own.counts.with(place, own.counts[place] + 1);
  const total = strokesTold({ counts });
  const kept = total < MOST_COUNTED ? counts : counts.map((count) => count / 2);
  const isDue = total < FEW || Math.floor(total) % SELDOM === 0;
  return { counts: kept, factor: isDue ? factorOf(kept, measure) : own.factor, usual, wasBeyond: isBeyond };
}

/**
 * The factor beyond which one healthy stroke in 400 is expected: the posterior predictive quantile of Student's t whose
 * spread and degrees of freedom are known from the counted strokes and from other rooms, summed over a grid of both (A.
 * Gelman, J. B. Carlin, H. S. Stern, D. B. Dunson, A. Vehtari, D. B. Rubin, 2013, Bayesian Data Analysis, sections 3.7
 * and 17.2). Few strokes leave it near what is usual, and a single odd one among many moves it little.
 */
function factorOf(counts: readonly number[], measure: MeasureName): number {
  return Math.min(MOST_FACTOR[measure] ?? 1, foreseenFactor(counts, measure));
}

const forWeights = new ReusedArray();

function foreseenFactor(counts: readonly number[], measure: MeasureName): number {
  const { priors, logs, tails, factors } = grid(PLAIN.has(measure) ? 'plain' : 'usual');
  const weights = forWeights.copyOf(priors);
  counts.forEach((count, place) => {
    if (count > 0) addTimes(weights, WEIGHT * count, logs[place]);
  });
  const aim = BEYOND_PROBABILITY * fromLogs(weights);
  const tail = (at: number) => dot(weights, tails[at]);
  // The first factor beyond which fewer lie than that: the tails fall as the factor grows.
  let [above, last] = [0, factors.length];
  while (above < last) {
    const middle = (above + last) >> 1;
    if (tail(middle) > aim) above = middle + 1;
    else last = middle;
  }
  if (above === 0 || above === factors.length) return factors[Math.min(above, factors.length - 1)];
  const [before, after] = [tail(above - 1), tail(above)];
  const way = Math.log(before / aim) / Math.log(before / after);
  return factors[above - 1] * (factors[above] / factors[above - 1]) ** way;
}

/** Adds so many times the one to the other, element by element. */
function addTimes(to: Float64Array, times: number, what: Float64Array): void {
  for (let at = 0; at < to.length; at++) to[at] += times * what[at];
}

/** The logarithm of a part that adds nothing in double precision. */
const NEGLIGIBLE = -40;

/** Replaces logarithms by their numbers, as parts of the largest, and answers the sum of those. */
function fromLogs(logs: Float64Array): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < logs.length; at++) most = Math.max(most, logs[at]);
  let sum = 0;
  for (let at = 0; at < logs.length; at++) {
    const away = logs[at] - most;
    logs[at] = away < NEGLIGIBLE ? 0 : Math.exp(away);
    sum += logs[at];
  }
  return sum;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < a.length; at++) sum += a[at] * b[at];
  return sum;
}

/** The kinds of strokes that a room may have: each array has one element for each kind. */
interface Grid {
  /** Logarithm of how likely each kind is beforehand. */
  readonly priors: Float64Array;
  /** By class: logarithm of how likely a stroke of each kind is to lie in it. */
  readonly logs: readonly Float64Array[];
  /** By factor: how likely a stroke of each kind is to lie beyond it. */
  readonly tails: readonly Float64Array[];
  readonly factors: readonly number[];
}

const made: Partial<Record<Tails, Grid>> = {};

/** The grid is the same for all rooms, and made once. */
function grid(tails: Tails): Grid {
  made[tails] ??= makeGrid(tails);
  return made[tails];
}

function makeGrid(tails: Tails): Grid {
  const factors = geometric(FACTORS);
  const degrees = DEGREES.flatMap((of, at) =>
    LIKELY[tails][at] > 0 ? [{ of, likely: LIKELY[tails][at] }] : [],
  );
  const kinds = geometric(SPREADS).flatMap((spread) =>
    degrees.map(({ of, likely }) => ({ spread, of, likely })),
  );
  const beyond = (part: number) =>
    Float64Array.from(
      kinds,
      ({ spread, of }) => 2 * studentTUpperTail((part * beyondQuantile()) / spread, of),
    );
  const ends = [beyond(0), ...CLASSES.map(beyond), beyond(Number.POSITIVE_INFINITY)];
  return {
    priors: Float64Array.from(
      kinds,
      ({ spread, likely }) =>
        Math.log(likely) - (Math.log(spread / SPREADS.usual) / SPREADS.logSpread) ** 2 / 2,
    ),
    logs: ends.slice(1).map((further, at) => further.map((tail, kind) => Math.log(ends[at][kind] - tail))),
    tails: factors.map(beyond),
    factors,
  };
}

function geometric({ least, most, count }: { least: number; most: number; count: number }): number[] {
  return Array.from({ length: count }, (_, at) => least * (most / least) ** (at / (count - 1)));
}
