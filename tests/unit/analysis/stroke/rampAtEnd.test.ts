import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { ONE_MOTOR, traceOf } from '../support/handMade.ts';
import { done } from '../support/measured.ts';

const RUNNING_AMPS = 10;

interface LetDown {
  readonly rateHz: number;
  /** Samples before the start, and after the motor was let down over 0.3 s. */
  readonly before: number;
  readonly after: number;
  readonly offsetAmps: number;
  readonly noiseAmps: number;
}

/** What is read of a motor that a controller lets down, in records that begin and end with so little rest. */
function letDown({ rateHz, before, after, offsetAmps, noiseAmps }: LetDown, seed: number) {
  const random = new Random(seed);
  const falling = 0.3 * rateHz;
  const runs = Math.round(20 * rateHz);
  const late = random.uniform(0, 1);
  const amps = Float64Array.from({ length: before + runs + Math.ceil(falling) + after }, (_, i) => {
    const since = i - before;
    const left = Math.max(0, Math.min(1, (runs + falling - since - late) / falling));
    const drawn = RUNNING_AMPS + 20 * Math.exp(-since / (0.2 * rateHz));
    return offsetAmps + (since < 0 ? 0 : left * drawn) + random.normal(0, noiseAmps);
  });
  const timesS = amps.map((_, i) => i / rateHz);
  const analysis = measureStroke(traceOf([{ side: 'main', timesS, amps }]), ONE_MOTOR);
  if (analysis.status !== 'done') throw new TypeError('a stroke that can be used is expected here');
  return { offsetAmps: analysis.sides.main.offsetAmps, doubts: analysis.doubts.map(({ doubt }) => doubt) };
}

const SEEDS = Array.from({ length: 40 }, (_, index) => index + 1);

test.each([
  { rateHz: 25, before: 3, after: 3, offsetAmps: 0, noiseAmps: 0.02 },
  { rateHz: 20, before: 0, after: 3, offsetAmps: 0, noiseAmps: 0.33 },
])('what a motor draws while it is let down at $rateHz Hz is no rest', (record) => {
  for (const seed of SEEDS) {
    const { offsetAmps, doubts } = letDown(record, seed);
    expect(Math.abs(offsetAmps ?? 0)).toBeLessThan(0.9);
    expect(doubts).toEqual([]);
  }
});

test.each([
  { what: 'three on the way down', before: 2, ends: [0.85, 0.55, 0.25] },
  { what: 'three on the way down and one at rest', before: 1, ends: [0.87, 0.55, 0.18, 0] },
  { what: 'many without a load', before: 2, ends: Array.from({ length: 280 }, () => 0.18) },
])(
  'a record that begins with $before at rest and ends with $what rests at what is read first',
  ({ before, ends }) => {
    for (const seed of SEEDS) {
      const random = new Random(seed);
      const zero = random.uniform(-0.1, 0.1);
      const driven = [2, 1.3, 1.1, ...Array.from({ length: 420 }, () => 1), ...ends];
      const drawn = [...Array.from({ length: before }, () => 0), ...driven.map((times) => -6 * times)];
      const amps = Float64Array.from(drawn, (each) => zero + each + random.normal(0, 0.03));
      const timesS = amps.map((_, i) => i / 10);
      const { sides } = done(measureStroke(traceOf([{ side: 'main', timesS, amps }]), ONE_MOTOR));
      expect(sides.main.sign).toBe(-1);
      expect(sides.main.runningAmps).toBeCloseTo(6, 0);
      expect(Math.abs(sides.main.offsetAmps ?? 0)).toBeLessThan(0.3);
    }
  },
);

test('the rest behind it still tells a zero that is off', () => {
  for (const seed of SEEDS) {
    const { offsetAmps, doubts } = letDown(
      { rateHz: 25, before: 8, after: 8, offsetAmps: 1.8, noiseAmps: 0.05 },
      seed,
    );
    expect(offsetAmps).toBeCloseTo(1.8, 0);
    expect(doubts).toEqual(['offset']);
  }
});
