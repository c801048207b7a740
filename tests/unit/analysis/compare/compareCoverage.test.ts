import { expect, test } from 'vitest';
import { correlationEvidence, correlationWeights } from '../../../../analysis/compare/correlationWeights.ts';
import { roomSpread } from '../../../../analysis/compare/roomSpread.ts';
import { shiftInterval } from '../../../../analysis/compare/shiftInterval.ts';
import { STROKE_CORRELATIONS } from '../../../../analysis/compare/strokeCorrelation.ts';
import { dependenceFactors, strokeDependence } from '../../../../analysis/compare/strokeDependence.ts';
import { squaresWithin } from '../../../../analysis/statistics/moderatedVariance.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';

const BETWEEN_STROKES_MS = 3 * 86_400_000;
const TRUE_SHIFT = 0.1;
const SPREAD = 0.03;
const RUNS = 200;

/** Values that keep the part `rho` of their error from stroke to stroke (AR(1)). */
function wandering(random: Random, rho: number, strokes: number): number[] {
  let error = random.normal(0, 1);
  return Array.from({ length: strokes }, () => {
    const value = SPREAD * error;
    error = rho * error + random.normal(0, Math.sqrt(1 - rho ** 2));
    return value;
  });
}

function spansOf(values: readonly number[]) {
  const each = values.length / 2;
  const times = values.map((_, stroke) => stroke * BETWEEN_STROKES_MS);
  return {
    before: values.slice(0, each),
    after: values.slice(each).map((value) => value + TRUE_SHIFT),
    beforeMs: times.slice(0, each),
    afterMs: times.slice(each),
    unsure: 0,
  };
}

/** Part of the runs in which the interval of 95 % holds the true shift. */
function coverage(rho: number, each: number): number {
  const random = new Random(100 * each + 10 * rho);
  const runs = Array.from({ length: RUNS }, () => spansOf(wandering(random, rho, 2 * each)));
  const factors = dependenceFactors(runs[0].beforeMs, runs[0].afterMs);
  const evidence = correlationEvidence(runs);
  let held = 0;
  runs.forEach((spans, run) => {
    const dependence = strokeDependence(factors, correlationWeights([evidence[run]]));
    const spread = roomSpread('runningAmps', squaresWithin(spans.before, spans.after), [], true);
    const interval = shiftInterval(spans, { spread, dependence }, 0.95);
    if (interval !== null && interval.lower <= TRUE_SHIFT && TRUE_SHIFT <= interval.upper) held++;
  });
  return held / RUNS;
}

test.each([2, 5, 10, 30])(
  'of %i strokes a side the interval holds the true shift, however far strokes resemble their neighbours',
  (each) => {
    for (const rho of [0, 0.3, 0.6]) expect(coverage(rho, each), `rho ${rho}`).toBeGreaterThan(0.91);
    // A wander slower than the spans can hardly be told from a level: with one correlation for all rooms, 55 % of thirty.
    expect(coverage(0.9, each), 'rho 0.9').toBeGreaterThan(0.77);
  },
  60_000,
);

test('what strokes show of their likeness outweighs what is thought beforehand, and few show next to nothing', () => {
  const sharedByNeighbours = (values: readonly number[]) =>
    correlationWeights(correlationEvidence([spansOf(values)])).reduce(
      (sum, weight, index) =>
        sum + weight * STROKE_CORRELATIONS[index].wander * STROKE_CORRELATIONS[index].kept,
      0,
    );
  const beforehand = sharedByNeighbours([]);
  expect(beforehand).toBeCloseTo(0.315, 9);
  expect(sharedByNeighbours([0, 0, 0, 0, 0, 0])).toBeCloseTo(beforehand, 9);
  expect(Math.abs(sharedByNeighbours([0, 0.1, 0, 0.1]) - beforehand)).toBeLessThan(0.1);
  expect(sharedByNeighbours(wandering(new Random(5), 0.9, 60))).toBeGreaterThan(0.6);
  expect(sharedByNeighbours(wandering(new Random(5), 0, 60))).toBeLessThan(0.2);
});

test('sides that wander with each other say no more than one of them', () => {
  const one = correlationEvidence([spansOf(wandering(new Random(5), 0.9, 20))]);
  const weights = correlationWeights(one);
  correlationWeights([...one, ...one]).forEach((weight, index) => {
    expect(weight).toBeCloseTo(weights[index], 12);
  });
});
