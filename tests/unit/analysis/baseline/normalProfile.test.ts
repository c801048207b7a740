import { describe, expect, test } from 'vitest';
import { normalProfile, type ReferenceProfile } from '../../../../analysis/baseline/normalProfile.ts';
import { PROFILE_BINS } from '../../../../analysis/measures.ts';

const bins = Array.from({ length: PROFILE_BINS }, (_, bin) => bin);
/** Heavier in the middle of the travel. */
const shape = (bin: number) => 1 + 0.2 * Math.sin((Math.PI * (bin + 0.5)) / PROFILE_BINS);
const strokeAt = (runningAmps: number, wobble: (bin: number) => number = () => 1): ReferenceProfile => ({
  runningAmps,
  profile: bins.map((bin) => runningAmps * shape(bin) * wobble(bin)),
});
const LEVEL = { lower: 9, centre: 10, upper: 10 ** 2 / 9 };

describe('the normal along the travel', () => {
  test('is the usual shape at the expected level, whatever the strokes drew', () => {
    const profile = normalProfile([strokeAt(8), strokeAt(9), strokeAt(12), strokeAt(10)], LEVEL);
    for (const bin of bins) expect(profile?.centre[bin]).toBeCloseTo(10 * shape(bin), 9);
  });

  test('is as wide as the level where the shape repeats to its floor of 1 %', () => {
    const profile = normalProfile([strokeAt(8), strokeAt(9), strokeAt(12), strokeAt(10)], LEVEL);
    // Student's t, 9 degrees of freedom (6 + 4 - 1), 1 in 800 above: 4.1458 (R: qt(1/800, 9, lower.tail = FALSE)).
    // At places that repeat exactly only the pooled floor counts: 6 of 9 parts of its square.
    const ofShape = 4.1458 * 0.01 * Math.sqrt(6 / 9) * Math.sqrt(1 + 1 / 4);
    const half = Math.hypot(ofShape, Math.log(10 / 9));
    expect(Math.log((profile?.upper[20] ?? 0) / (profile?.centre[20] ?? 1))).toBeCloseTo(half, 3);
    expect(Math.log((profile?.centre[20] ?? 0) / (profile?.lower[20] ?? 1))).toBeCloseTo(half, 3);
  });

  test('is wider where the strokes differ, and one odd stroke does not move its middle', () => {
    const odd = (bin: number) => (bin === 30 ? 3 : 1);
    const restless = (sign: number) => (bin: number) => (bin === 50 ? 1 + 0.1 * sign : 1);
    const reference = [-2, -1, 0, 1, 2, 3].map((sign) => strokeAt(10, restless(sign)));
    const profile = normalProfile([...reference, strokeAt(10, odd)], LEVEL);
    const width = (bin: number) => (profile?.upper[bin] ?? 0) / (profile?.lower[bin] ?? 1);
    expect(width(50)).toBeGreaterThan(1.5 * width(10));
    expect(profile?.centre[30]).toBeCloseTo(10 * shape(30), 9);
  });

  test('is null where too little is known, by place and as a whole', () => {
    const gap = (of: ReferenceProfile) => ({
      ...of,
      profile: of.profile.map((amps, bin) => (bin < 2 ? null : amps)),
    });
    const profile = normalProfile([gap(strokeAt(8)), gap(strokeAt(9)), strokeAt(10), strokeAt(9)], LEVEL);
    expect([profile?.centre[0], profile?.lower[1]]).toEqual([null, null]);
    expect(profile?.centre[2]).toBeCloseTo(10 * shape(2), 9);
    expect(normalProfile([strokeAt(8), strokeAt(9)], LEVEL)).toBeNull();
    expect(normalProfile([], LEVEL)).toBeNull();
  });
});
