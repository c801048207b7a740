import { studentTUpperTail } from '../statistics/studentT.ts';
import { BEYOND_PROBABILITY, beyondQuantile } from './beyondQuantile.ts';

/**
 * What a channel's own strokes have told of the single-stroke limits of one measure. The `limit` of a `Residual` is set before
 * they are known, for strokes as unlike as real ones may be: of a room whose strokes are plainer not one in thousands is
 * beyond it.
 */
export interface OwnLimit {
  /** Strokes by how large a part of that limit their residual was: one number for each of CLASSES, and one for what is larger. */
  readonly counts: readonly number[];
  /** How many times as far as that limit one healthy stroke in 400 lies. */
  readonly factor: number;
  /** The room's own limit as it was of late, on the measure's scale: a moving mean; null: no stroke was judged. */
  readonly usual: number | null;
  /** Whether the latest stroke lay beyond that limit. */
  readonly wasBeyond: boolean;
}

/** Upper ends of the classes. */
const CLASSES = [0.03, 0.06, 0.12, 0.2, 0.3, 0.42, 0.6, 0.8, 1, 1.3];
/** What lies so many times as far as the limit is no stroke of the usual kind, and tells nothing of them. A guess, no source. */
const FAR = 3;
/** One beyond the room's own limit counts as so many times as far, however far it is (P. J. Huber, 1981, Robust Statistics). A guess. */
const JUST_BEYOND = 1.15;
/** Once so many strokes are counted all count half, so that the latest years tell most. A guess, no source. */
const MOST_COUNTED = 400;
/** The moving mean of the limit spans about four strokes. A guess, no source. */
const USUAL_PART = 0.25;

/**
 * What strokes may be, as a part of what the limit was set for: how widely they spread, and the degrees of freedom of their
 * tails with how likely each is beforehand. Rooms spread by some three quarters of it, as a rule by no less than half and
 * no more than all; near the normal distribution more often than not, and now and then with tails as fat as the test rig's.
 * Guesses, from simulated rooms of many makes.
 */
const SPREADS = { least: 0.15, most: 2, count: 16, usual: 0.74, logSpread: 0.35 };
const TAILS = [
  { degrees: 2.5, likely: 0.1 },
  { degrees: 4, likely: 0.1 },
  { degrees: 8, likely: 0.3 },
  { degrees: 30, likely: 0.5 },
];
/** Strokes of one stay are alike: two tell as much as one of another. A guess, no source. */
const WEIGHT = 0.5;
/**
 * Factors that are asked for. Whatever its strokes tell, no room's limits become narrower than the one; nor wider than they were
 * set beforehand, or a slow fault would widen them before it is told.
 */
const FACTORS = { least: 0.2, most: 1, count: 33 };

/** Nothing is known yet of this measure's strokes. */
export function beginOwnLimit(): OwnLimit {
  const counts = Array.from({ length: CLASSES.length + 1 }, () => 0);
  return { counts, factor: factorOf(counts), usual: null, wasBeyond: false };
}

/** A new normal has limits of its own; how its strokes lie within them stays as it was. */
export function withNewNormal(own: OwnLimit): OwnLimit {
  return { ...own, usual: null };
}

/**
 * Takes in one more healthy stroke. An odd one comes alone: what lies beyond the limit right after another that did may be a
 * fault that has begun, and counts for nothing, or the fault would widen the limits that it is held against.
 */
export function noteResidual(
  own: OwnLimit,
  { residual, limit, ownLimit }: { residual: number; limit: number; ownLimit: number },
): OwnLimit {
  const part = Math.abs(residual) / limit;
  const isBeyond = part > 1;
  const usual = own.usual === null ? ownLimit : own.usual + USUAL_PART * (ownLimit - own.usual);
  if (part > FAR || (isBeyond && own.wasBeyond)) return { ...own, usual, wasBeyond: isBeyond };
  const place = CLASSES.filter((end) => Math.min(part, JUST_BEYOND * own.factor) > end).length;
  const counts = own.counts.with(place, own.counts[place] + 1);
  const total = counts.reduce((sum, count) => sum + count, 0);
  const kept = total < MOST_COUNTED ? counts : counts.map((count) => count / 2);
  return { counts: kept, factor: factorOf(kept), usual, wasBeyond: isBeyond };
}

/**
 * The factor beyond which one healthy stroke in 400 is foreseen: the posterior predictive quantile of Student's t whose spread
 * and degrees of freedom are known from the counted strokes and from other rooms, summed over a grid of both (A. Gelman, J. B.
 * Carlin, H. S. Stern, D. B. Dunson, A. Vehtari, D. B. Rubin, 2013, Bayesian Data Analysis, sections 3.7 and 17.2). Few strokes
 * leave it near what is usual, and a single odd one among many moves it little.
 */
function factorOf(counts: readonly number[]): number {
  const { kinds, factors } = grid();
  const logs = kinds.map(({ prior, logs }) => {
    let sum = prior;
    for (let place = 0; place < counts.length; place++) sum += WEIGHT * counts[place] * logs[place];
    return sum;
  });
  const most = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - most));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const logTail = (at: number) => {
    let sum = 0;
    for (let kind = 0; kind < weights.length; kind++) sum += weights[kind] * kinds[kind].tails[at];
    return Math.log(sum / total);
  };
  const aim = Math.log(BEYOND_PROBABILITY);
  // The first factor beyond which fewer lie: the tails fall with it.
  let [above, last] = [0, factors.length];
  while (above < last) {
    const middle = (above + last) >> 1;
    if (logTail(middle) > aim) above = middle + 1;
    else last = middle;
  }
  if (above === 0 || above === factors.length) return factors[Math.min(above, factors.length - 1)];
  const [before, after] = [logTail(above - 1), logTail(above)];
  const way = (before - aim) / (before - after);
  return factors[above - 1] * (factors[above] / factors[above - 1]) ** way;
}

/** One kind of strokes: how likely it is beforehand, and how likely each class and each tail are in it. */
interface Kind {
  readonly prior: number;
  readonly logs: readonly number[];
  readonly tails: readonly number[];
}

let made: { readonly kinds: readonly Kind[]; readonly factors: readonly number[] } | null = null;

/** The same for all rooms: made once. */
function grid() {
  made ??= makeGrid();
  return made;
}

function makeGrid() {
  const factors = geometric(FACTORS);
  const kinds = geometric(SPREADS).flatMap((spread) =>
    TAILS.map(({ degrees, likely }): Kind => {
      const tail = (part: number) => 2 * studentTUpperTail((part * beyondQuantile()) / spread, degrees);
      const tails = [1, ...CLASSES.map(tail), 0];
      const away = Math.log(spread / SPREADS.usual) / SPREADS.logSpread;
      return {
        prior: Math.log(likely) - away ** 2 / 2,
        logs: tails.slice(1).map((next, place) => Math.log(tails[place] - next)),
        tails: factors.map(tail),
      };
    }),
  );
  return { kinds, factors };
}

function geometric({ least, most, count }: { least: number; most: number; count: number }): number[] {
  return Array.from({ length: count }, (_, at) => least * (most / least) ** (at / (count - 1)));
}
