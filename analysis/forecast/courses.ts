import { likeliestSize, ofSize, type Sized, sizesOf } from './changeOfSize.ts';
import { type Sums, sumsWithout } from './memoryTakenOut.ts';

/** One way in which a rise may have come about. */
export interface Rise {
  /** The last stroke at the old level, counted from the oldest. */
  readonly onset: number;
  /** Its size is what it adds in a stroke, natural logarithm. */
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
/** A rise goes on from stroke to stroke, a step is over with one. How much either adds in a stroke is a guess, no source. */
const RISE: Shape = { longest: Number.POSITIVE_INFINITY, most: 0.04 };
const STEP: Shape = { longest: 1, most: 0.4 };
/** Natural logarithm of how much less likely than the likeliest a change is that is left out. */
const LOG_NEGLIGIBLE = -8;

interface Shape {
  /** Strokes. */
  readonly longest: number;
  /** In a stroke, natural logarithm: nothing up to that is likelier beforehand than the rest. */
  readonly most: number;
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
 * that rises along a straight line from some stroke on. That stroke, sizes, levels, spread and the memory from stroke to
 * stroke are unknown and summed over. A rise from the first stroke on stands for all that began before.
 *
 * `levels`: natural logarithms, oldest first, one a stroke, no gaps, at least 4.
 *
 * Source: A. F. M. Smith, D. G. Cook (1980), Straight lines with a change-point: a Bayesian analysis of some renal
 * transplant data, Applied Statistics 29; with errors of first order as in S. Chib (1993), Bayes regression with
 * autoregressive errors; summed by quadrature.
 */
export function weighCourses(levels: ArrayLike<number>): Courses {
  const values = Float64Array.from(levels);
  const onsets = values.length - 2;
  const sumsByMemory = MEMORIES.map((memory) => sumsWithout(memory, values));
  const course = new Float64Array(values.length);
  const stayed = sumsByMemory.map((sumsWith) => ofSize(0, sumsWith(course, 0)).evidence);
  const changes: Change[] = [];
  for (const shape of [RISE, STEP]) {
    for (let onset = 0; onset < onsets; onset++) {
      for (let i = 0; i < course.length; i++) course[i] = Math.min(shape.longest, Math.max(0, i - onset));
      for (const sumsWith of sumsByMemory) {
        const sums = sumsWith(course, onset);
        const { evidence } = ofSize(likeliestSize(sums, shape.most), sums);
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
      const weight = Math.exp(sized.evidence - best);
      if (shape === RISE) rises.push({ onset, sized, weight });
      else others += weight;
    }
  }
  const whole = rises.reduce((sum, { weight }) => sum + weight, 0);
  return {
    riseProbability: whole / (whole + others),
    rises: rises.map(({ onset, sized, weight }) => ({ onset, sized, weight: weight / whole })),
  };
}
