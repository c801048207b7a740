import { expect, test } from 'vitest';
import { compareSpans } from '../../../../analysis/compare/compareSpans.ts';
import { shapeChanges } from '../../../../analysis/compare/shapeChange.ts';
import { PROFILE_BINS } from '../../../../analysis/measures.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { ONE_MOTOR, ROOM } from '../support/handMade.ts';
import { strokeEvent, type Told } from '../support/strokeEvents.ts';

const BUMP = { from: 0.5, to: 0.6 };
const BIN = 1 / PROFILE_BINS;

/** `each` strokes of either direction before and after, as they are told. */
function compare(each: number, before: Partial<Told>, after: Partial<Told>, seed: number, room = ROOM) {
  const span = (first: number, told: Partial<Told>) =>
    Array.from({ length: 2 * each }, (_, i) => strokeEvent(first + i, room, seed, told));
  return compareSpans(span(0, before), span(100, after), room);
}

test.each([
  { each: 2, part: 0.15, room: ROOM },
  { each: 2, part: 1.2, room: ROOM },
  { each: 2, part: 0.5, room: ONE_MOTOR },
  { each: 3, part: 0.15, room: ROOM },
  { each: 5, part: 0.15, room: ROOM },
])(
  'with $each strokes a side a bump of $part of the current that was mended is told where it was, and nowhere else',
  ({ each, part, room }) => {
    for (let seed = 1; seed <= 8; seed++) {
      const { groups } = compare(each, { bump: { ...BUMP, part } }, {}, seed, room);
      for (const { changedBins } of groups) {
        expect(changedBins.length).toBeGreaterThan(0);
        for (const { from, to, shiftAmps } of changedBins) {
          expect(from).toBeGreaterThanOrEqual(BUMP.from - BIN);
          expect(to).toBeLessThanOrEqual(BUMP.to + BIN);
          expect(shiftAmps / -part).toBeGreaterThan(5);
        }
      }
    }
  },
);

test('the sentence says what changed where, and that the whole is not told apart', () => {
  const mended = compare(2, { bump: { ...BUMP, part: 0.5 } }, {}, 3, ONE_MOTOR).sentence;
  expect(mended).toMatch(
    /^Between (48|50) % and (59|61) % of the way out, the motor draws \d(\.\d)? A less than before, going out and coming in: what held it back there is gone or less\. As a whole, the running current is not told apart from before\.$/,
  );
  const worse = compare(2, {}, { bump: { ...BUMP, part: 0.5 } }, 3, ONE_MOTOR).sentence;
  expect(worse).toMatch(/A more than before, .*: something holds it back there more than before\./);
});

test.each([2, 3, 4, 6])(
  'of %i strokes a side that did not change at most one group in twenty tells a place',
  (each) => {
    let told = 0;
    let groups = 0;
    for (let seed = 1; seed <= 50; seed++) {
      for (const { changedBins } of compare(each, {}, {}, seed).groups) {
        groups++;
        if (changedBins.length > 0) told++;
      }
    }
    expect(groups).toBe(200);
    expect(told).toBeLessThanOrEqual(10);
  },
);

test.each([2, 3, 5])('strokes that differ as a whole tell no place: %i a side', (each) => {
  const random = new Random(31);
  const profile = () => {
    const level = 8 * Math.exp(random.normal(0, 0.2));
    return Array.from(
      { length: PROFILE_BINS },
      (_, bin) => level * (1 + 0.1 * Math.sin(bin / 5) + random.normal(0, 0.01)),
    );
  };
  let told = 0;
  for (let run = 0; run < 60; run++) {
    const span = () => Array.from({ length: each }, profile);
    const [changes] = shapeChanges([{ before: span(), after: span(), dependence: 1 }], 0.05);
    expect(changes).toHaveLength(PROFILE_BINS);
    if (changes.some(({ shift, reach }) => Math.abs(shift) > reach)) told++;
  }
  // 3 expected at the most; 9 or more has a probability below 1 in 300 (binomial).
  expect(told).toBeLessThan(9);
});

test('before for after turns a change about, with the same reach', () => {
  const random = new Random(13);
  const span = (bump: number) =>
    Array.from({ length: 5 }, () =>
      Array.from({ length: PROFILE_BINS }, (_, bin) => 8 + (bin === 20 ? bump : 0) + random.normal(0, 0.2)),
    );
  const [before, after] = [span(0), span(3)];
  const [there] = shapeChanges([{ before, after, dependence: 1 }], 0.05);
  const [back] = shapeChanges([{ before: after, after: before, dependence: 1 }], 0.05);
  expect(there.filter(({ shift, reach }) => Math.abs(shift) > reach).map(({ bin }) => bin)).toEqual([20]);
  there.forEach(({ shift, reach }, b) => {
    expect(back[b].shift).toBeCloseTo(-shift, 9);
    expect(back[b].reach).toBeCloseTo(reach, 9);
  });
});
