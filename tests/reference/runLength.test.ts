import { describe, expect, test } from 'vitest';
import {
  cusumRunLength,
  cusumSteadyStateRunLength,
  designCusum,
  designEwma,
  designShewhart,
  ewmaRunLength,
  shewhartRunLength,
} from '../../analysis/statistics/runLength.ts';
import { allNear, near } from './values/near.ts';
import { published, publishedCase } from './values/read.ts';

interface CusumInputs {
  k: number;
  h: number;
  sides: 'one' | 'two';
  headstart?: number;
  shiftSigma: number[];
}

describe('CUSUM (R package spc 0.6.7, S. Knoth, xcusum.arl; checked with a second solver)', () => {
  const cases = published<CusumInputs, { arl: number[] }>('arl-cusum', (id) =>
    /^k0\.5.*(sided|h\/2)$/.test(id),
  );
  test.each(cases)('$id', ({ inputs: { shiftSigma, ...chart }, expected }) =>
    allNear(
      shiftSigma.map((shift) => cusumRunLength(chart, shift)),
      expected.arl,
      1e-7,
    ),
  );

  const steady = published<CusumInputs, { steadyStateArl: number[] }>('arl-cusum', (id) =>
    id.endsWith('-state'),
  );
  test.each(steady)('$id (xcusum.ad)', ({ inputs: { shiftSigma, ...chart }, expected }) =>
    allNear(
      shiftSigma.map((shift) => cusumSteadyStateRunLength(chart, shift)),
      expected.steadyStateArl,
      1e-7,
    ),
  );
});

describe('CUSUM, published tables', () => {
  interface Printed {
    printedArl: number[];
    computedArl: number[];
    printedArlHeadstart2?: number[];
    computedArlHeadstart2?: number[];
  }
  /** Printed digits: three figures (Lucas and Crosier), five (Vance), two decimals (Brook and Evans). */
  const printedWithin: Record<string, number> = {
    'published-lucas-crosier-1982-table-1': 0.006,
    'published-vance-1986-table-1': 3e-4,
    'published-waldmann-1986': 0.002,
    'published-brook-evans-1972': 3e-4,
  };
  const cases = published<CusumInputs, Printed>('arl-cusum', (id) => id in printedWithin);
  test.each(cases)('$source', ({ id, inputs: { shiftSigma, ...chart }, expected }) => {
    const plain = shiftSigma.map((shift) => cusumRunLength(chart, shift));
    allNear(plain, expected.computedArl, 1e-7);
    allNear(plain, expected.printedArl, printedWithin[id]);
    if (!expected.printedArlHeadstart2) return;
    const fast = shiftSigma.map((shift) => cusumRunLength({ ...chart, headstart: 2 }, shift));
    allNear(fast, expected.computedArlHeadstart2!, 1e-7);
    allNear(fast, expected.printedArlHeadstart2, printedWithin[id]);
  });

  test.each([
    [4, 0, 336, 0.002],
    [4, 1, 8.38, 0.001],
    [5, 0, 930, 0.001],
    [5, 1, 10.4, 0.003],
  ])('NIST e-Handbook 6.3.2.3.1: h %d, shift %d, printed %d', (h, shift, printed, tolerance) =>
    near(cusumRunLength({ k: 0.5, h }, shift), printed, tolerance),
  );

  test('SAS/QC manual 1999, as quoted in the help page of spc::xcusum.arl', () => {
    near(cusumRunLength({ k: 0.25, h: 8 }, 2.5), 4.1500836225, 1e-7);
    near(cusumRunLength({ k: 0.25, h: 8, headstart: 0.1 }, 2.5), 4.1061588131, 1e-7);
    near(cusumRunLength({ k: 0.25, h: 8, sides: 'two' }, 2.5), 4.1500826715, 1e-6);
  });

  test('D. Siegmund’s closed form is within 1 percent (Sequential Analysis, 1985)', () => {
    for (const [h, closed] of [
      [4, 338.09316715655797],
      [5, 938.2223641163949],
    ]) {
      near(cusumRunLength({ k: 0.5, h }), closed, 0.01);
    }
  });
});

interface EwmaInputs {
  lambda: number;
  L: number;
  targetArl0: number;
  limits: string;
  shiftSigma: number[];
}

describe('EWMA (R package spc 0.6.7, S. Knoth, xewma.arl and xewma.crit)', () => {
  const designs = published<EwmaInputs, { L: number; arl: number[] }>('arl-ewma', (id) => /^lambda/.test(id));
  test.each(designs)('$id', ({ id, inputs, expected }) => {
    const varying = id.endsWith('time-varying');
    const chart = { lambda: inputs.lambda, limits: varying ? ('time-varying' as const) : ('fixed' as const) };
    allNear(
      inputs.shiftSigma.map((shift) => ewmaRunLength({ ...chart, widths: expected.L }, shift)),
      expected.arl,
      varying ? 1e-4 : 1e-6,
    );
    if (!varying) near(designEwma(chart, inputs.targetArl0), expected.L, 1e-7);
  });

  const textbook = published<EwmaInputs, { arl: number[] }>('arl-ewma', (id) => id.startsWith('design-'));
  test.each(textbook)('$id', ({ inputs: { lambda, L, shiftSigma }, expected }) =>
    allNear(
      shiftSigma.map((shift) => ewmaRunLength({ lambda, widths: L }, shift)),
      expected.arl,
      1e-7,
    ),
  );
});

describe('EWMA, published tables', () => {
  interface Tables {
    printedArl: number[][];
    computedArl: number[][];
  }
  interface TableInputs {
    shiftSigma: number[];
    designs: { lambda: number; L: number }[];
  }

  test.each([
    ['published-lucas-saccucci-1990-table-3', 0.003],
    ['published-crowder-1987-table-1', 0.005],
  ])('%s', (id, tolerance) => {
    const { inputs, expected } = publishedCase<TableInputs, Tables>('arl-ewma', id);
    inputs.designs.forEach(({ lambda, L }, row) => {
      const lengths = inputs.shiftSigma.map((shift) => ewmaRunLength({ lambda, widths: L }, shift));
      allNear(lengths, expected.computedArl[row], 1e-7);
      lengths.forEach((length, i) => {
        // Crowder's 3.95 at shift 1.25 for lambda 0.5 is a misprint for 3.59.
        if (expected.printedArl[row][i] !== 3.95) near(length, expected.printedArl[row][i], tolerance);
      });
    });
  });

  test('S. H. Steiner (1999), Table 2: fixed and time-varying limits, to the 4 percent that he is off', () => {
    interface Steiner {
      printedFixed: number[];
      printedTimeVarying: number[];
      computedFixed: number[];
      computedTimeVarying: number[];
    }
    const { inputs, expected } = publishedCase<EwmaInputs, Steiner>(
      'arl-ewma',
      'published-steiner-1999-table-2',
    );
    const chart = { lambda: inputs.lambda, widths: inputs.L };
    const fixed = inputs.shiftSigma.map((shift) => ewmaRunLength(chart, shift));
    const varying = inputs.shiftSigma.map((shift) =>
      ewmaRunLength({ ...chart, limits: 'time-varying' }, shift),
    );
    allNear(fixed, expected.computedFixed, 1e-7);
    allNear(varying, expected.computedTimeVarying, 1e-3);
    allNear(fixed, expected.printedFixed, 0.04);
    allNear(varying, expected.printedTimeVarying, 0.06);
  });

  test('SAS/QC manual 1999, as quoted in the help page of spc::xewma.arl', () =>
    near(ewmaRunLength({ lambda: 0.25, widths: 3 }, 1), 11.154267016, 1e-9));

  test('S. V. Crowder (1989), Journal of Quality Technology 21: L for a run length of 250', () => {
    const lambdas = [0.05, 0.1, 0.15, 0.2, 0.25];
    const widths = lambdas.map((lambda) => designEwma({ lambda }, 250));
    allNear(widths, [2.317896, 2.5461827, 2.6541423, 2.7185866, 2.7613184], 1e-6);
    allNear(widths, [2.32, 2.55, 2.65, 2.72, 2.76], 0.002);
  });
});

describe('designs for long run lengths (R package spc 0.6.7, S. Knoth, xcusum.crit and xewma.crit)', () => {
  interface Design {
    sides: 'one' | 'two';
    k: number;
    lambda: number;
    targetArl0: number;
  }
  interface Found {
    h: number;
    L: number;
    arlAtShift2k: number;
    arlAtShift1: number;
    'arlAtShift0.5': number;
    arlAtShift2: number;
  }
  test.each(published<Design, Found>('arl-high-arl0-designs', (id) => id.startsWith('cusum')))(
    '$id',
    ({ inputs: { k, sides, targetArl0 }, expected }) => {
      const h = designCusum({ k, sides }, targetArl0);
      expect(h).toBeCloseTo(expected.h, 5);
      near(cusumRunLength({ k, sides, h }, 2 * k), expected.arlAtShift2k, 1e-5);
      near(cusumRunLength({ k, sides, h }, 1), expected.arlAtShift1, 1e-5);
    },
  );

  test.each(published<Design, Found>('arl-high-arl0-designs', (id) => id.startsWith('ewma')))(
    '$id',
    ({ inputs: { lambda, targetArl0 }, expected }) => {
      const widths = designEwma({ lambda }, targetArl0);
      expect(widths).toBeCloseTo(expected.L, 5);
      near(ewmaRunLength({ lambda, widths }, 0.5), expected['arlAtShift0.5'], 1e-5);
      near(ewmaRunLength({ lambda, widths }, 1), expected.arlAtShift1, 1e-5);
      near(ewmaRunLength({ lambda, widths }, 2), expected.arlAtShift2, 1e-5);
    },
  );

  interface Limits {
    limitOneSided: number;
    limitTwoSided: number;
    arlAtShift1TwoSided: number;
  }
  test.each(published<Design, Limits>('arl-high-arl0-designs', (id) => id.startsWith('shewhart')))(
    '$id',
    ({ inputs: { targetArl0 }, expected }) => {
      expect(designShewhart({ sides: 'one' }, targetArl0)).toBeCloseTo(expected.limitOneSided, 6);
      const limit = designShewhart({ sides: 'two' }, targetArl0);
      expect(limit).toBeCloseTo(expected.limitTwoSided, 6);
      near(shewhartRunLength({ limit }, 1), expected.arlAtShift1TwoSided, 1e-6);
    },
  );

  test('D. M. Hawkins (1993), as reprinted by D. C. Montgomery: h for 370 observations', () => {
    const found = [0.25, 0.5, 0.75, 1].map((k) => designCusum({ k, sides: 'two' }, 370.4).toFixed(2));
    expect(found).toEqual(['8.01', '4.77', '3.34', '2.52']);
  });
});

describe('Shewhart chart without further rules', () => {
  const { inputs, expected } = publishedCase<
    { shiftSigma: number[] },
    { arl: number[]; printedArl: number[] }
  >('arl-shewhart-runs-rules', 'rules-1');
  test('C. W. Champ, W. H. Woodall (1987), Table 1, first column', () => {
    const lengths = inputs.shiftSigma.map((shift) => shewhartRunLength({ limit: 3 }, shift));
    allNear(lengths, expected.arl, 1e-7);
    allNear(lengths, expected.printedArl, 0.002);
  });
});
