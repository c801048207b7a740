import { describe, expect, test } from 'vitest';
import { bestCuts, changePoints } from '../../analysis/statistics/changePoints.ts';
import { pettitt } from '../../analysis/statistics/pettitt.ts';
import { near } from './values/near.ts';
import { published } from './values/read.ts';

/** Strucchange 1.5-3 (R), ruptures (Python) and an own dynamic programme agree. */
describe('J. Bai, P. Perron (2003): given numbers of breaks, and the choice by BIC', () => {
  interface Inputs {
    x: number[];
    minSegment: number;
  }
  interface Expected {
    perNumberOfBreaks: { breaks: number; lastIndexOfEachSegment1Based: number[]; rss: number; bic: number }[];
    bicChoice: number[];
  }
  const cases = published<Inputs, Expected>('change-points', (id) => id.endsWith('bai-perron'));
  test.each(cases)('$id', ({ inputs: { x, minSegment }, expected }) => {
    const n = x.length;
    const byBic = expected.perNumberOfBreaks.map(({ breaks, lastIndexOfEachSegment1Based, rss, bic }) => {
      const { cuts, sumOfSquares } = bestCuts(x, breaks, minSegment)!;
      expect(cuts).toEqual(lastIndexOfEachSegment1Based);
      near(sumOfSquares, rss, 1e-9);
      const found =
        n * (Math.log(sumOfSquares / n) + Math.log(2 * Math.PI) + 1) + Math.log(n) * 2 * (breaks + 1);
      near(found, bic, 1e-9);
      return { cuts, bic: found };
    });
    expect(byBic.sort((a, b) => a.bic - b.bic)[0].cuts).toEqual(expected.bicChoice);
  });
});

describe('R. Killick, P. Fearnhead, I. A. Eckley (2012): PELT', () => {
  const cases = published<{ x: number[]; penalty: number }, { lastIndexOfEachSegment1Based: number[] }>(
    'change-points',
    (id) => /^pelt-(nile|lakehuron|three-levels)$/.test(id),
  );
  test.each(cases)('$id', ({ inputs: { x, penalty }, expected }) =>
    expect(changePoints(x, penalty)).toEqual(expected.lastIndexOfEachSegment1Based),
  );

  test('R package changepoint 2.3: standardised Nile with its two penalties', () => {
    const [{ inputs, expected }] = published<
      { mean: number; sd: number },
      { bicPenalty: number; mbicPenalty: number; peltBic: number[]; peltMbic: number[] }
    >('change-points', (id) => id === 'pelt-nile-standardised');
    const [nile] = published<{ x: number[] }, object>('change-points', (id) => id === 'pelt-nile');
    const standard = nile.inputs.x.map((value) => (value - inputs.mean) / inputs.sd);
    near(2 * Math.log(100), expected.bicPenalty, 1e-12);
    expect(changePoints(standard, expected.bicPenalty)).toEqual(expected.peltBic);
    expect(changePoints(standard, expected.mbicPenalty)).toEqual(expected.peltMbic);
  });
});

describe('A. N. Pettitt (1979), by direct double loop', () => {
  const cases = published<
    { x: number[] },
    { K: number; lastIndexOfFirstSegment1Based: number; pApproximate: number }
  >('change-points', (id) => id.startsWith('pettitt'));
  test.each(cases)('$id', ({ inputs: { x }, expected }) => {
    const { k, firstIndex, p } = pettitt(x)!;
    expect(k).toBe(expected.K);
    expect(firstIndex).toBe(expected.lastIndexOfFirstSegment1Based);
    near(p, expected.pApproximate, 1e-9);
  });
});
