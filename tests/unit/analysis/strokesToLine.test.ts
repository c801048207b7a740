import { describe, expect, test } from 'vitest';
import { strokesToLine } from '../../../analysis/forecast/strokesToLine.ts';
import { Random } from '../../../server/demo/simulator/random.ts';

/** A drift with the simulator's kind of stroke-to-stroke memory: first-order autoregressive about a straight line. */
function drift(random: Random, strokes: number, perStroke: number, spread: number, memory: number): number[] {
  let before = random.normal(0, spread);
  return Array.from({ length: strokes }, (_, i) => {
    before = memory * before + Math.sqrt(1 - memory ** 2) * random.normal(0, spread);
    return i * perStroke + before;
  });
}

describe('strokes until a rise reaches its line', () => {
  test('a straight rise without noise is told exactly', () => {
    const levels = Array.from({ length: 20 }, (_, i) => 0.005 * i);
    const forecast = strokesToLine(levels, 0.2);
    expect(forecast?.strokes).toBeCloseTo((0.2 - 0.095) / 0.005, 9);
    expect(forecast?.lower).toBeCloseTo(21, 6);
    expect(forecast?.upper).toBeCloseTo(21, 6);
  });

  test.each([
    ['too few strokes', Array.from({ length: 10 }, (_, i) => 0.01 * i)],
    ['no trend', drift(new Random(5), 40, 0, 0.02, 0)],
    ['a fall', Array.from({ length: 30 }, (_, i) => -0.01 * i)],
    ['already beyond the line', Array.from({ length: 30 }, (_, i) => 0.3 + 0.01 * i)],
    ['a line out of sight', Array.from({ length: 30 }, (_, i) => 1e-5 * i)],
  ])('%s: no forecast', (_name, levels) => {
    expect(strokesToLine(levels, 0.18)).toBeNull();
  });

  test.each([
    ['independent strokes', 0],
    ['strokes that remember', 0.4],
  ])('the 80 %% interval covers the crossing in 75 to 85 %% of simulated drifts: %s', (_name, memory) => {
    const random = new Random(80);
    let told = 0;
    let covered = 0;
    for (let run = 0; run < 1500; run++) {
      const strokes = random.integer(24, 60);
      const perStroke = random.uniform(0.002, 0.004);
      const levels = drift(random, strokes, perStroke, 0.02, memory);
      const truth = 0.3 / perStroke - (strokes - 1);
      const forecast = strokesToLine(levels, 0.3);
      if (forecast === null) continue;
      told++;
      if (truth >= forecast.lower && truth <= (forecast.upper ?? Number.POSITIVE_INFINITY)) covered++;
    }
    expect(told).toBeGreaterThan(1000);
    expect(covered / told).toBeGreaterThan(0.75);
    expect(covered / told).toBeLessThan(0.85);
  });
});
