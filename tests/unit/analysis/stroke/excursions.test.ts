import { expect, test } from 'vitest';
import { excursions } from '../../../../analysis/stroke/peaks/spikes.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';

const RATE_HZ = 50;
const LASTING_S = 36;

/** The spikes of a running part of some 10 A with noise, whose current is this many times its level by travel, 0 to 1. */
const spikesOf = (course: (place: number) => number, seed: number) => excursionsOf(course, seed, 0).spikes;

/** Of such a part that stood still for `pausedS` halfway, which is cut away. */
function excursionsOf(course: (place: number) => number, seed: number, pausedS: number) {
  const random = new Random(seed);
  const count = RATE_HZ * LASTING_S;
  const positions = Float64Array.from({ length: count }, (_, i) => (i + 0.5) / count);
  return excursions({
    signal: { stepS: 1 / RATE_HZ },
    timesS: positions.map((place) => place * LASTING_S + (place > 0.5 ? pausedS : 0)),
    amps: positions.map((place) => 10 * course(place) + random.normal(0, 0.1)),
    positions,
    noiseAmps: 0.1,
    runningAmps: 10,
  });
}

const bump = (place: number, at: number, height: number): number =>
  height * Math.exp(-(((place - at) / 0.012) ** 2) / 2);
const ripple = (place: number, part: number, periods: number): number =>
  part * Math.sin(2 * Math.PI * periods * place + 1);

test.each([
  { part: 0.07, periods: 10.3 },
  { part: 0.1, periods: 9 },
  { part: 0.08, periods: 14.6 },
])(
  'a peak stands out of a ripple of $part with $periods periods, on its crest or in its trough',
  ({ part, periods }) => {
    for (let seed = 1; seed <= 8; seed++) {
      const at = 0.2 + 0.07 * seed;
      const found = spikesOf((place) => 1 + ripple(place, part, periods) + bump(place, at, 0.35), seed);
      expect(found.map(({ position }) => position)).toEqual([expect.closeTo(at, 1)]);
      expect(Math.abs(found[0].position - at)).toBeLessThan(0.01);
    }
  },
);

test('a ripple itself has no peaks, be it regular, growing or with another one in it', () => {
  for (let seed = 1; seed <= 8; seed++) {
    for (const periods of [6, 9.4, 17]) {
      const regular = (place: number) => 1 + ripple(place, 0.12, periods);
      const growing = (place: number) => 1 + ripple(place, 0.2 * place, periods);
      const twofold = (place: number) => regular(place) + ripple(place, 0.06, 2 * periods);
      for (const course of [regular, growing, twofold]) expect(spikesOf(course, seed)).toEqual([]);
    }
  }
});

test('a rise that stays until the part ends is no peak, and hides none before it', () => {
  for (let seed = 1; seed <= 8; seed++) {
    for (const from of [0.965, 0.97, 0.975, 0.98]) {
      const seal = (place: number) =>
        1 + 0.3 * place ** 8 + (place > from ? 0.7 * (1 - Math.exp((from - place) / 0.003)) : 0);
      expect(spikesOf(seal, seed)).toEqual([]);
      const found = spikesOf((place) => seal(place) + bump(place, 0.85, 0.4), seed);
      expect(found.map(({ position }) => position)).toEqual([expect.closeTo(0.85, 1)]);
    }
  }
});

test('a stroke is as rough with a pause in it as without: the pause is no part of the course', () => {
  for (let seed = 1; seed <= 8; seed++) {
    const course = (place: number) => 1 + 0.05 * Math.sin(2 * Math.PI * 8 * place);
    const { roughness } = excursionsOf(course, seed, 0);
    for (const pausedS of [4, 20, 90]) expect(excursionsOf(course, seed, pausedS).roughness).toBe(roughness);
  }
});
