import { expect, test } from 'vitest';
import { atReference } from '../../../../analysis/compare/atReference.ts';
import type { ComparedStroke } from '../../../../analysis/compare/compared.ts';
import { compareSpans } from '../../../../analysis/compare/compareSpans.ts';
import { shiftOf } from '../../../../analysis/compare/measureShift.ts';
import { roomSpread } from '../../../../analysis/compare/roomSpread.ts';
import { MEASURE_NAMES, MEASURES, PROFILE_BINS } from '../../../../analysis/measures.ts';
import { squaresWithin } from '../../../../analysis/statistics/moderatedVariance.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { ROOM } from '../support/handMade.ts';
import { strokeEvent, type Told } from '../support/strokeEvents.ts';

const LESS = { factors: [0.6, 0.6] };

/** `each` strokes of either direction on each side of the work, which did `change`. */
function compare(each: number, change: Partial<Told>, seed = 1) {
  const of = (from: number, told: Partial<Told>) =>
    Array.from({ length: 2 * each }, (_, i) => strokeEvent(from + i, ROOM, seed, told));
  return compareSpans(of(0, {}), of(100, change), ROOM);
}

const shiftIn = (groups: ReturnType<typeof compare>['groups'], side: string, direction: string) => {
  const group = groups.find((each) => each.side === side && each.direction === direction);
  const shift = group?.shifts.find(({ measure }) => measure === 'runningAmps');
  if (group === undefined || shift === undefined) throw new Error(`No shift for ${side} ${direction}`);
  return { ...shift, group };
};

test.each([1, 2, 3, 5])(
  'with %i strokes of either direction a side of the work, a fall by 40 percent is told and sized',
  (each) => {
    const { groups, sentence } = compare(each, LESS);
    expect(groups).toHaveLength(4);
    for (const side of ROOM.sides) {
      for (const direction of ['extend', 'retract']) {
        const { shift, lower, upper, before, after, excludesZero, group } = shiftIn(groups, side, direction);
        expect([group.strokesBefore, group.strokesAfter]).toEqual([each, each]);
        expect(excludesZero).toBe(true);
        expect(upper).toBeLessThan(0);
        expect(lower).toBeLessThanOrEqual(shift ?? Number.NaN);
        expect(shift).toBeLessThanOrEqual(upper ?? Number.NaN);
        expect((shift ?? 0) / (before ?? 1)).toBeCloseTo(-0.4, 1);
        expect((after ?? 0) / (before ?? 1)).toBeCloseTo(0.6, 1);
      }
    }
    expect(sentence).toMatch(/^[A-Z].*\bless\b.*\.$/);
    expect(sentence).toMatch(/(38|39|40|41|42) %/);
    expect(sentence).not.toMatch(/NaN|null|undefined|amperes|Hodges|interval/);
  },
);

test.each([1, 2])(
  'equal strokes are not told apart: nearly every interval of the running current holds zero',
  (each) => {
    let holding = 0;
    let all = 0;
    for (let seed = 1; seed <= 25; seed++) {
      const { groups, sentence } = compare(each, {}, seed);
      for (const { shifts } of groups) {
        const running = shifts.find(({ measure }) => measure === 'runningAmps');
        all++;
        if (running?.excludesZero === false) holding++;
      }
      const none = groups.every(
        ({ shifts }) => !shifts.some((s) => s.measure === 'runningAmps' && s.excludesZero),
      );
      if (none) expect(sentence).toMatch(/not told apart/);
    }
    expect(holding / all).toBeGreaterThan(0.9);
  },
);

test('every measure has its shift, with its unit, and the interval stands about it', () => {
  for (const { shifts, profileBefore, profileAfter, bandBefore, bandAfter } of compare(3, LESS).groups) {
    expect(shifts.map(({ measure }) => measure)).toEqual(MEASURE_NAMES);
    expect([profileBefore.length, profileAfter.length]).toEqual([PROFILE_BINS, PROFILE_BINS]);
    for (const [mean, { lower, upper }] of [
      [profileBefore, bandBefore],
      [profileAfter, bandAfter],
    ] as const)
      for (const [bin, amps] of mean.entries()) {
        if (amps === null) expect([lower[bin], upper[bin]]).toEqual([null, null]);
        else {
          expect(lower[bin]).toBeLessThanOrEqual(amps + 1e-9);
          expect(upper[bin]).toBeGreaterThanOrEqual(amps - 1e-9);
        }
      }
    for (const { shift, lower, upper, excludesZero } of shifts) {
      if (shift === null || lower === null || upper === null) continue;
      for (const number of [shift, lower, upper]) expect(Number.isFinite(number)).toBe(true);
      expect(lower).toBeLessThanOrEqual(shift);
      expect(shift).toBeLessThanOrEqual(upper);
      expect(excludesZero).toBe(lower > 0 || upper < 0);
    }
  }
});

test('one stroke on a side of the work, or none, is said to be too few', () => {
  for (const each of [0, 0.5]) {
    const { groups, sentence } = compare(each, LESS);
    for (const { shifts, changedBins } of groups) {
      for (const { shift, excludesZero } of shifts) expect([shift, excludesZero]).toEqual([null, false]);
      expect(changedBins).toEqual([]);
    }
    expect(sentence).toMatch(/no comparison can be made/);
  }
});

test('two strokes before and two after that share one direction are compared in it; those that share none are not', () => {
  const strokes = (...indices: number[]) => indices.map((index) => strokeEvent(index, ROOM, 1));
  const shared = compareSpans(strokes(0, 1), strokes(100, 102), ROOM);
  for (const { direction, shifts } of shared.groups)
    expect(shifts.some(({ shift }) => shift !== null)).toBe(direction === 'extend');
  const apart = compareSpans(strokes(1, 3), strokes(100, 102), ROOM);
  expect(apart.sentence).toMatch(/no comparison can be made/);
});

test('excluded and unusable strokes are left out', () => {
  const span = (from: number) => Array.from({ length: 6 }, (_, i) => strokeEvent(from + i, ROOM, 1));
  const wild = [{ excluded: true }, { unusable: true }].map((aside, i) =>
    strokeEvent(50 + 2 * i, ROOM, 1, { ...aside, factors: [5, 5] }),
  );
  const plain = compareSpans(span(0), span(100), ROOM);
  expect(compareSpans([...span(0), ...wild], [...wild, ...span(100)], ROOM)).toEqual(plain);
});

test('the order of the strokes within a span changes nothing', () => {
  const span = (from: number) => Array.from({ length: 8 }, (_, i) => strokeEvent(from + i, ROOM, 2));
  const [one, other] = [
    compareSpans(span(0), span(100), ROOM),
    compareSpans(span(0).reverse(), span(100).reverse(), ROOM),
  ];
  one.groups.forEach((group, g) => {
    group.shifts.forEach(({ shift, lower, upper }, i) => {
      const mirror = other.groups[g].shifts[i];
      for (const [a, b] of [
        [shift, mirror.shift],
        [lower, mirror.lower],
        [upper, mirror.upper],
      ]) {
        expect(b ?? 0).toBeCloseTo(a ?? 0, 9);
      }
    });
  });
});

test('before and after the other way round turns the shift of a difference about', () => {
  const span = (from: number, told: Partial<Told>) =>
    Array.from({ length: 8 }, (_, i) => strokeEvent(from + i, ROOM, 3, told));
  const [first, second] = [span(0, {}), span(100, { factors: [1.2, 0.9] })];
  const there = compareSpans(first, second, ROOM).groups[0].shifts.find(({ measure }) => measure === 'share');
  const back = compareSpans(second, first, ROOM).groups[0].shifts.find(({ measure }) => measure === 'share');
  expect(back?.shift).toBeCloseTo(-(there?.shift ?? 0), 9);
  expect(back?.lower).toBeCloseTo(-(there?.upper ?? 0), 9);
});

test('a warmer day and a better battery are not taken for a repair', () => {
  const span = (from: number, told: Partial<Told>) =>
    Array.from({ length: 8 }, (_, i) => {
      const cold = Math.exp(-0.005 * ((told.ambientC ?? 20) - 20));
      return strokeEvent(from + i, ROOM, 4, { ...told, factors: [cold, cold] });
    });
  const { groups } = compareSpans(
    span(0, { ambientC: -5, volts: 12 }),
    span(100, { ambientC: 25, volts: 13.4 }),
    ROOM,
  );
  for (const { shifts } of groups) {
    const running = shifts.find(({ measure }) => measure === 'runningAmps');
    expect(Math.abs((running?.shift ?? 9) / (running?.before ?? 1))).toBeLessThan(0.05);
  }
});

/** Strokes of one level whose current follows the weather by this slope per degree, from this day's temperature on. */
function weathered(first: number, seed: number, slope: number, temperatures: readonly number[]) {
  return temperatures.map((ambientC, i) => {
    const factor = Math.exp(slope * (ambientC - 20));
    return strokeEvent(first + i, ROOM, seed, { ambientC, factors: [factor, factor] });
  });
}
const WINTER = [-6, -4, 1, 3, -8, -2, 4, 0, -5, 2, -7, 5, -1, -3, 6, 3];
const SUMMER = [17, 24, 29, 21, 18, 26, 31, 22, 19, 27, 16, 25, 30, 23, 20, 28];

test.each([-0.005, -0.01, -0.001])(
  'no place of the travel changed from winter to summer: %f a degree',
  (slope) => {
    for (let seed = 1; seed <= 10; seed++) {
      const { groups } = compareSpans(
        weathered(0, seed, slope, WINTER),
        weathered(100, seed, slope, SUMMER),
        ROOM,
      );
      expect(groups.flatMap(({ changedBins }) => changedBins)).toEqual([]);
      for (const { profileBefore, profileAfter } of groups) {
        const [before, after] = [profileBefore, profileAfter].map((profile) => profile[32] ?? Number.NaN);
        expect(Math.abs(after / before - 1)).toBeLessThan(0.08);
      }
    }
  },
);

test('the interval holds the truth where weather and supply differ, whatever slopes the room has', () => {
  const random = new Random(23);
  let held = 0;
  let all = 0;
  for (let seed = 1; seed <= 150; seed++) {
    // The spread of slopes that is taken for usual (common practice, no source).
    const slope = random.normal(-0.005, 0.004);
    const { groups } = compareSpans(
      weathered(0, seed, slope, WINTER.slice(0, 8)),
      weathered(100, seed, slope, SUMMER.slice(0, 8)),
      ROOM,
    );
    const running = groups[0].shifts.find(({ measure }) => measure === 'runningAmps');
    all++;
    if (running?.excludesZero === false) held++;
  }
  expect(held / all).toBeGreaterThan(0.92);
});

test('a fall by a third is told from winter to summer all the same, at every place', () => {
  const before = weathered(0, 1, -0.005, WINTER);
  const after = SUMMER.map((ambientC, i) => {
    const factor = (2 / 3) * Math.exp(-0.005 * (ambientC - 20));
    return strokeEvent(100 + i, ROOM, 1, { ambientC, factors: [factor, factor] });
  });
  for (const { shifts, changedBins } of compareSpans(before, after, ROOM).groups) {
    const running = shifts.find(({ measure }) => measure === 'runningAmps');
    expect((running?.upper ?? 0) / (running?.before ?? 1)).toBeLessThan(-0.2);
    const covered = changedBins.reduce((sum, { from, to }) => sum + (to - from), 0);
    expect(covered).toBeGreaterThan(0.95);
  }
});

test('places are told where a bump went away, and nowhere else', () => {
  const { from, to } = { from: 0.5, to: 0.6 };
  const span = (first: number, told: Partial<Told>) =>
    Array.from({ length: 10 }, (_, i) => strokeEvent(first + i, ROOM, 5, told));
  const { groups } = compareSpans(span(0, { bump: { from, to, part: 0.5 } }), span(100, {}), ROOM);
  const bin = 1 / PROFILE_BINS;
  for (const { changedBins } of groups) {
    expect(changedBins.length).toBeGreaterThan(0);
    for (const range of changedBins) {
      expect(range.from).toBeGreaterThanOrEqual(from - bin);
      expect(range.to).toBeLessThanOrEqual(to + bin);
      expect(range.shiftAmps).toBeLessThan(-2);
    }
  }
});

/** How often the interval of the running current holds the true factor, strokes log-normal about their level. */
function coverage(each: number, spread: number, runs: number, factor: number): number {
  const random = new Random(1000 * each + 7);
  const [running] = MEASURES;
  const strokes = Array.from({ length: each }, (_, i) => comparedStroke(2 * i));
  const span = (level: number) =>
    strokes.map(({ event, analysis }) => {
      const runningAmps = level * Math.exp(random.normal(0, spread));
      return {
        event,
        analysis: { ...analysis, sides: { front: { ...analysis.sides.front, runningAmps } } },
      };
    });
  let held = 0;
  for (let run = 0; run < runs; run++) {
    const values = atReference(running.name, span(8), span(8 * factor), { side: 'front', nominalVolts: 12 });
    const spread = roomSpread(running.name, squaresWithin(values.before, values.after), [], true);
    const { before, lower, upper } = shiftOf(running, values, { spread, dependence: 1 }, true);
    const relative = (amps: number | null) => Math.log(1 + (amps ?? 0) / (before ?? 1));
    if (relative(lower) <= Math.log(factor) && Math.log(factor) <= relative(upper)) held++;
  }
  return held / runs;
}

function comparedStroke(index: number): ComparedStroke {
  const event = strokeEvent(index, ROOM, 1);
  if (event.analysis.status !== 'done') throw new Error('A made-up stroke is always measured.');
  return { event, analysis: event.analysis };
}

test.each([
  { each: 1, factor: 1 },
  { each: 1, factor: 0.7 },
  { each: 2, factor: 1 },
  { each: 2, factor: 0.7 },
  { each: 4, factor: 0.85 },
  { each: 8, factor: 1.1 },
])(
  'the 95 percent interval holds the truth in 93 percent and more, but not always: $each strokes, times $factor',
  (row) => {
    const held = coverage(row.each, 0.03, 2000, row.factor);
    expect(held).toBeGreaterThanOrEqual(0.93);
    expect(held).toBeLessThanOrEqual(0.996);
  },
);

test('of pairs without a change one in twenty names one, whichever side and direction it would be of', () => {
  const random = new Random(41);
  const spread = () => Math.exp(random.normal(0, 0.06));
  const span = (from: number, part: number) =>
    Array.from({ length: 4 }, (_, i) =>
      strokeEvent(from + i, ROOM, 1, { factors: [part * spread(), part * spread()] }),
    );
  const compared = (part: number) =>
    Array.from({ length: 120 }, () => compareSpans(span(0, 1), span(4, part), ROOM));
  const same = compared(1);
  const named = same.filter(({ groups }) =>
    groups.some(({ levelIsSure, changedBins }) => levelIsSure || changedBins.length > 0),
  );
  // 6 expected; 12 or more has a probability below 1 in 40 (binomial). By the intervals, each by itself, it is 19.
  expect(named.length).toBeLessThan(12);
  for (const comparison of same) {
    expect(named.includes(comparison)).toBe(
      !/^The running current is not told apart/.test(comparison.sentence),
    );
  }
  for (const { groups } of compared(0.6)) expect(groups.some(({ levelIsSure }) => levelIsSure)).toBe(true);
});
