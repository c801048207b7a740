import { likeliestSize, ofSize, type Sized, sizesOf } from './changeOfSize.ts';
import { type Sums, sumsWithout } from './memoryTakenOut.ts';

/** One way in which a rise may have come about. */
export interface Rise {
  /** The last stroke at the old level, counted from the oldest. */
  readonly onset: number;
  /** Strokes from there to the latest. */
  readonly span: number;
  /** Its rise goes by this power of the strokes since: 1 is straight, more bends up, less bends down. */
  readonly bend: number;
  /** Its size is what it has added in a stroke so far, on average, natural logarithm. */
  readonly sized: Sized;
  /** How likely this one is among the rises: they sum to 1. */
  readonly weight: number;
}

/** What strokes say of how they came about. */
export interface Courses {
  /** How likely a rise that goes on is, beside a level that stayed and one that stepped once. */
  readonly riseProbability: number;
  readonly rises: readonly Rise[];
}

/** What a stroke may keep of the error of the one before. */
const MEMORIES = [0, 0.2, 0.4, 0.6, 0.8];
/** What either adds in a stroke is a guess, no source. */
const MOST_RISE = 0.04;
const MOST_STEP = 0.4;
/**
 * A rise goes on from stroke to stroke, a step is over with one. Wear that feeds itself bends a rise up, seldom one bends down: three in
 * five are straight, which is a guess, no source. When one that bends began tells little of it: each third stroke stands for three.
 */
const SHAPES: readonly Shape[] = [
  { isRise: true, bend: 0.7, part: 0.03, most: MOST_RISE, onsetsApart: 3 },
  { isRise: true, bend: 1, part: 0.6, most: MOST_RISE, onsetsApart: 1 },
  { isRise: true, bend: 1.5, part: 0.2, most: MOST_RISE, onsetsApart: 3 },
  { isRise: true, bend: 2, part: 0.17, most: MOST_RISE, onsetsApart: 3 },
  { isRise: false, bend: 0, part: 1, most: MOST_STEP, onsetsApart: 1 },
];
/** Natural logarithm of how much less likely than the likeliest a change is that is left out. */
const LOG_NEGLIGIBLE = -8;

interface Shape {
  readonly isRise: boolean;
  /** As of a `Rise`; 0 is a step. */
  readonly bend: number;
  /** Of the rises, or of the steps, beforehand. */
  readonly part: number;
  /** Of so many onsets one is looked at. */
  readonly onsetsApart: number;
  /** In a stroke, natural logarithm: nothing up to that is likelier beforehand than the rest. */
  readonly most: number;
}

/** How likely a shape that began after one of the onsets is beforehand, beside the level that stayed. */
function standsFor({ part, onsetsApart }: Shape): number {
  return part * onsetsApart;
}

/** A change of one shape that began after one stroke, with one memory. */
interface Change {
  readonly shape: Shape;
  readonly onset: number;
  readonly sums: Sums;
  /** For its likeliest size. */
  readonly evidence: number;
}

/**
 * Weighs three courses against each other, each as likely beforehand: a level that stayed, a level that stepped, a level
 * that rises from some stroke on, along a straight line or one that bends. That stroke, sizes, levels, spread and the
 * memory from stroke to stroke are unknown and summed over. A rise from the first stroke on stands for all that began before.
 *
 * `levels`: natural logarithms, oldest first, one a stroke, no gaps, at least 4.
 *
 * Source: A. F. M. Smith, D. G. Cook (1980), Straight lines with a change-point: a Bayesian analysis of some renal
 * transplant data, Applied Statistics 29; with errors of first order as in S. Chib (1993), Bayes regression with
 * autoregressive errors; summed by quadrature, over shapes as J. A. Hoeting, D. Madigan, A. E. Raftery, C. T. Volinsky (1999),
 * Bayesian model averaging: a tutorial, Statistical Science 14.
 */
export function weighCourses(levels: ArrayLike<number>): Courses {
  const values = Float64Array.from(levels);
  const latest = values.length - 1;
  const onsets = values.length - 2;
  const sumsByMemory = MEMORIES.map((memory) => sumsWithout(memory, values));
  const course = new Float64Array(values.length);
  const stayed = sumsByMemory.map((sumsWith) => ofSize(0, sumsWith(course, 0)).evidence);
  const changes: Change[] = [];
  for (const shape of SHAPES) {
    for (let onset = 0; onset < onsets; onset += shape.onsetsApart) {
      const span = shape.isRise ? latest - onset : 1;
      for (let i = 0; i < course.length; i++)
        course[i] = i > onset ? courseAt(i - onset, span, shape.bend) : 0;
      for (const sumsWith of sumsByMemory) {
        const sums = sumsWith(course, onset);
        const { evidence } = ofSize(likeliestSize(sums, shape.most), sums, Math.log(standsFor(shape)));
        changes.push({ shape, onset, sums, evidence });
      }
    }
  }
  const best = changes.reduce((most, { evidence }) => Math.max(most, evidence), Math.max(...stayed));
  const rises: Rise[] = [];
  let others = onsets * stayed.reduce((sum, evidence) => sum + Math.exp(evidence - best), 0);
  for (const { shape, onset, sums, evidence } of changes) {
    if (evidence - best < LOG_NEGLIGIBLE) continue;
    for (const sized of sizesOf(sums, shape.most)) {
      const weight = standsFor(shape) * Math.exp(sized.evidence - best);
      if (shape.isRise) rises.push({ onset, span: latest - onset, bend: shape.bend, sized, weight });
      else others += weight;
    }
  }
  const whole = rises.reduce((sum, { weight }) => sum + weight, 0);
  return {
    riseProbability: whole / (whole + others),
    rises: rises.map((rise) => ({ ...rise, weight: rise.weight / whole })),
  };
}

/** What a rise has added by this stroke, counted from the oldest; natural logarithm. */
export function addedBy({ onset, span, bend, sized }: Rise, stroke: number): number {
  return sized.size * courseAt(stroke - onset, span, bend);
}

/** Strokes at the mean pace of the span that come to as much as so many strokes of one that bends. */
function courseAt(strokes: number, span: number, bend: number): number {
  return bend === 1 ? strokes : span * (strokes / span) ** bend;
}
