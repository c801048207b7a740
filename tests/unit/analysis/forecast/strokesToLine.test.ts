import { describe, expect, test } from 'vitest';
import { strokesToLine } from '../../../../analysis/forecast/strokesToLine.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';

/** The service line: a fifth above normal. */
const LINE = Math.log(1.2);

interface Course {
  readonly strokes: number;
  /** What stroke `i` draws without its scatter, natural logarithm over normal. */
  readonly expected: (i: number) => number;
  readonly spread: number;
  /** Of the first-order autoregressive scatter. */
  readonly memory: number;
}

function levelsOf(random: Random, { strokes, expected, spread, memory }: Course): number[] {
  let before = random.normal(0, spread);
  return Array.from({ length: strokes }, (_, i) => {
    before = memory * before + Math.sqrt(1 - memory ** 2) * random.normal(0, spread);
    return expected(i) + before;
  });
}

const rising = (quiet: number, perStroke: number) => (i: number) => Math.max(0, i - quiet) * perStroke;

/** Reaches the line as late as a straight rise of `perStroke`, by a power of the strokes since. */
const bending = (quiet: number, perStroke: number, power: number) => (i: number) =>
  LINE * ((Math.max(0, i - quiet) * perStroke) / LINE) ** power;

/** How truths lie to the intervals that were told of them. */
class Coverage {
  asked = 0;
  told = 0;
  early = 0;
  late = 0;

  add(levels: readonly number[], line: number, truth: number): void {
    this.asked++;
    const forecast = strokesToLine(levels, line);
    if (forecast === null) return;
    this.told++;
    if (truth < forecast.lower) this.late++;
    if (truth > (forecast.upper ?? Number.POSITIVE_INFINITY)) this.early++;
  }

  get parts() {
    return {
      told: this.told / this.asked,
      covered: 1 - (this.early + this.late) / this.told,
      early: this.early / this.told,
      late: this.late / this.told,
    };
  }
}

describe('strokes until a rise reaches its line', () => {
  test.each([
    ['from the first stroke on', 0],
    ['after a quiet stretch', 40],
  ])('a straight rise without noise is told to the stroke: %s', (_name, quiet) => {
    const levels = Array.from({ length: quiet + 20 }, (_, i) => rising(quiet, 0.005)(i));
    const forecast = strokesToLine(levels, 0.2);
    expect(Math.abs((forecast?.strokes ?? 0) - 21)).toBeLessThan(0.5);
    expect(Math.abs((forecast?.perStroke ?? 0) - 0.005)).toBeLessThan(0.0002);
    expect(forecast?.lower).toBeGreaterThan(17);
    expect(forecast?.upper).toBeLessThan(24);
  });

  test.each([
    ['too few strokes', Array.from({ length: 10 }, (_, i) => 0.01 * i)],
    ['no trend', levelsOf(new Random(5), { strokes: 40, expected: () => 0, spread: 0.02, memory: 0 })],
    ['the same again and again', Array.from({ length: 40 }, () => 0.01)],
    ['a fall', Array.from({ length: 30 }, (_, i) => -0.01 * i)],
    ['already beyond the line', Array.from({ length: 30 }, (_, i) => 0.3 + 0.01 * i)],
    ['a line out of sight', Array.from({ length: 30 }, (_, i) => 1e-5 * i)],
  ])('%s: no forecast', (_name, levels) => {
    expect(strokesToLine(levels, 0.18)).toBeNull();
  });

  test.each([0, 0.3, 0.6, 0.8])(
    'nothing is forecast of 98 in 100 healthy stretches whose strokes remember %f',
    (memory) => {
      const random = new Random(81);
      let told = 0;
      for (let run = 0; run < 400; run++) {
        const levels = levelsOf(random, { strokes: 120, expected: () => 0, spread: 0.025, memory });
        if (strokesToLine(levels, LINE) !== null) told++;
      }
      expect(told).toBeLessThanOrEqual(8);
    },
  );

  test('a level that stepped once is no rise that goes on', () => {
    const random = new Random(82);
    let told = 0;
    for (let run = 0; run < 400; run++) {
      const expected = (i: number) => (i < 60 ? 0 : 0.12);
      const strokes = 60 + random.integer(8, 40);
      if (strokesToLine(levelsOf(random, { strokes, expected, spread: 0.02, memory: 0.5 }), LINE) !== null)
        told++;
    }
    expect(told).toBeLessThanOrEqual(20);
  });

  /** Rises after a quiet stretch, of many rates, spreads and memories, asked for at three stages of their growth. */
  function coverageOf(power: number): Coverage {
    const random = new Random(80);
    const all = new Coverage();
    for (const memory of [0, 0.3, 0.5, 0.8]) {
      for (let run = 0; run < 30; run++) {
        const quiet = random.integer(30, 100);
        const perStroke = Math.exp(random.uniform(Math.log(0.001), Math.log(0.01)));
        const reached = quiet + LINE / perStroke;
        const levels = levelsOf(random, {
          strokes: Math.floor(reached),
          expected: bending(quiet, perStroke, power),
          spread: random.uniform(0.01, 0.04),
          memory,
        });
        for (const part of [0.25, 0.55, 0.85]) {
          const strokes = Math.floor(quiet + part * (reached - quiet));
          const latest = levels.slice(Math.max(0, strokes - 120), strokes);
          all.add(latest, LINE, reached - (strokes - 1));
        }
      }
    }
    return all;
  }

  test('the 80 % interval covers 75 to 85 % of straight rises after a quiet stretch', () => {
    const { told, covered, early, late } = coverageOf(1).parts;
    expect(told).toBeGreaterThan(0.55);
    expect(covered).toBeGreaterThan(0.75);
    expect(covered).toBeLessThan(0.85);
    expect(early).toBeLessThan(0.2);
    expect(late).toBeLessThan(0.125);
  });

  test('and of rises that feed themselves, which a straight line would tell of too late', () => {
    const { told, covered, early, late } = coverageOf(1.5).parts;
    expect(told).toBeGreaterThan(0.4);
    expect(covered).toBeGreaterThan(0.75);
    for (const part of [late, early]) expect(part).toBeLessThan(0.2);
  });

  test.each([
    ['independent strokes', 0],
    ['strokes that remember', 0.4],
  ])('and of rises that began before the strokes at hand: %s', (_name, memory) => {
    const random = new Random(80);
    const all = new Coverage();
    for (let run = 0; run < 100; run++) {
      const strokes = random.integer(24, 60);
      const perStroke = random.uniform(0.002, 0.004);
      const levels = levelsOf(random, { strokes, expected: rising(0, perStroke), spread: 0.02, memory });
      all.add(levels, 0.3, 0.3 / perStroke - (strokes - 1));
    }
    expect(all.parts.told).toBeGreaterThan(0.6);
    expect(all.parts.covered).toBeGreaterThan(0.74);
  });
});
