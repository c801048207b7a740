import { describe, expect, test } from 'vitest';
import { cusum, cusumChange } from '../../analysis/statistics/cusum.ts';
import { ewma, ewmaHalfWidth } from '../../analysis/statistics/ewma.ts';
import { individuals } from '../../analysis/statistics/individuals.ts';
import { allNear, allWithin, near } from './values/near.ts';
import { publishedCase } from './values/read.ts';

const fromOne = (indices: number[]) => indices.map((index) => index + 1);
const steps = (count: number) => Array.from({ length: count }, (_, i) => i + 1);

describe('NIST e-Handbook 6.3.2.3, CUSUM of 20 group means', () => {
  interface Inputs {
    x: number[];
    target: number;
    k: number;
    h: number;
    sigma: number;
  }
  interface Sums {
    sHigh: number[];
    sLow: number[];
    sHighSigma: number[];
    printedSHigh: number[];
    printedSLow: number[];
    signalPositions1Based: number[];
    nPlus: number[];
    nMinus: number[];
    estimatedChangeAfter1Based: number;
  }
  const { inputs, expected } = publishedCase<Inputs, Sums>('nist-cusum', 'tabular');
  const chart = cusum(inputs.x, inputs);

  test('sums, exact and as printed', () => {
    allWithin(chart.high, expected.sHigh, 1e-9);
    allWithin(chart.low, expected.sLow, 1e-9);
    allWithin(chart.high, expected.printedSHigh, 0.0051);
    allWithin(chart.low, expected.printedSLow, 0.0051);
  });

  test('signals, counts and the change that they speak of', () => {
    expect(fromOne(chart.highSignals)).toEqual(expected.signalPositions1Based);
    expect(chart.lowSignals).toEqual([]);
    expect([...chart.highCount]).toEqual(expected.nPlus);
    expect([...chart.lowCount]).toEqual(expected.nMinus);
    const change = cusumChange(chart, chart.highSignals[0], inputs);
    expect(change.firstIndex).toBe(expected.estimatedChangeAfter1Based);
  });

  test.each(['standardised', 'textbook-k05-h5-in-sigma'])('%s', (id) => {
    const sigmas = publishedCase<Inputs, Sums>('nist-cusum', id);
    const { x, target, sigma, k, h } = sigmas.inputs;
    const scaled = x.map((value) => (value - target) / sigma);
    const standard = cusum(scaled, { target: 0, k, h });
    expect(fromOne(standard.highSignals)).toEqual(sigmas.expected.signalPositions1Based);
    if (sigmas.expected.sHighSigma) allWithin(standard.high, sigmas.expected.sHighSigma, 1e-9);
  });

  test('the V-mask at group 14 says the same as the tabular sums', () => {
    interface Mask {
      cumulative: number[];
      pointsOutsideLowerArm1Based: number[];
    }
    const mask = publishedCase<Inputs & { origin1Based: number }, Mask>('nist-cusum', 'vmask');
    const { origin1Based: origin, h, k } = mask.inputs;
    const path = [0, ...mask.expected.cumulative];
    const rises = steps(origin).map((j) => path[origin] - path[origin - j] - k * j);
    const outside = steps(origin).filter((j) => rises[j - 1] > h);
    expect(outside.map((j) => origin - j).sort((a, b) => a - b)).toEqual(
      mask.expected.pointsOutsideLowerArm1Based,
    );
    near(chart.high[origin - 1], Math.max(0, ...rises), 1e-9);
  });
});

describe('NIST e-Handbook 6.3.2.4, EWMA of 20 values', () => {
  interface Inputs {
    y: number[];
    lambda: number;
    target: number;
    sigma: number;
    L: number;
  }
  test('series and steady-state limits', () => {
    interface Settled {
      ewma: number[];
      printedEwma: number[];
      ucl: number;
      lcl: number;
      printedUcl: number;
      printedLcl: number;
    }
    const { inputs, expected } = publishedCase<Inputs, Settled>('nist-ewma', 'steady-state-limits');
    const averages = ewma(inputs.y, inputs.lambda, inputs.target);
    allWithin(averages, expected.ewma, 1e-9);
    allWithin(averages, expected.printedEwma, 0.0051);
    const half = ewmaHalfWidth(inputs.sigma, inputs.lambda, inputs.L);
    near(inputs.target + half, expected.ucl, 1e-12);
    near(inputs.target - half, expected.lcl, 1e-12);
    // The page rounds the root to four figures.
    allWithin([inputs.target + half, inputs.target - half], [expected.printedUcl, expected.printedLcl], 1e-4);
    expect(averages.every((average) => Math.abs(average - inputs.target) < half)).toBe(true);
  });

  test('time-varying limits', () => {
    const { inputs, expected } = publishedCase<Inputs, { ucl: number[]; lcl: number[] }>(
      'nist-ewma',
      'time-varying-limits',
    );
    const halves = steps(20).map((step) => ewmaHalfWidth(inputs.sigma, inputs.lambda, inputs.L, step));
    allNear(
      halves.map((half) => inputs.target + half),
      expected.ucl,
      1e-12,
    );
    allNear(
      halves.map((half) => inputs.target - half),
      expected.lcl,
      1e-12,
    );
  });
});

describe('D. C. Montgomery, Introduction to Statistical Quality Control, Tables 9.1 and 9.2 (R package qcc 2.7)', () => {
  test('tabular CUSUM', () => {
    interface Sums {
      sHigh: number[];
      sLow: number[];
      nPlus: number[];
      printedSHighFirst29: number[];
      firstSignal1Based: number;
      estimatedChangeAfter1Based: number;
      estimatedNewMean: number;
    }
    const { inputs, expected } = publishedCase<{ x: number[]; target: number; k: number; h: number }, Sums>(
      'spc-montgomery-and-pistonrings',
      'montgomery-tabular-cusum',
    );
    const chart = cusum(inputs.x, inputs);
    allWithin(chart.high, expected.sHigh, 1e-9);
    allWithin(chart.low, expected.sLow, 1e-9);
    allWithin(chart.high.subarray(0, 29), expected.printedSHighFirst29, 0.0051);
    expect([...chart.highCount]).toEqual(expected.nPlus);
    expect(chart.highSignals[0] + 1).toBe(expected.firstSignal1Based);
    const change = cusumChange(chart, chart.highSignals[0], inputs);
    expect(change.firstIndex).toBe(expected.estimatedChangeAfter1Based);
    near(change.mean, expected.estimatedNewMean, 1e-9);
  });

  test('EWMA with time-varying limits', () => {
    interface Averages {
      ewma: number[];
      halfWidth: number[];
      signals1Based: number[];
    }
    const { inputs, expected } = publishedCase<{ x: number[]; lambda: number; L: number }, Averages>(
      'spc-montgomery-and-pistonrings',
      'montgomery-ewma',
    );
    const averages = ewma(inputs.x, inputs.lambda, 10);
    const halves = steps(30).map((step) => ewmaHalfWidth(1, inputs.lambda, inputs.L, step));
    allNear(averages, expected.ewma, 1e-9);
    allNear(halves, expected.halfWidth, 1e-9);
    const signals = steps(30).filter((step) => Math.abs(averages[step - 1] - 10) > halves[step - 1]);
    expect(signals).toEqual(expected.signals1Based);
  });

  test('viscosity: individuals and EWMA', () => {
    interface Limits {
      mean: number;
      sigmaFromMovingRange: number;
      individualsLimits: [number, number];
      ewma: number[];
      ewmaLimits: [number, number][];
    }
    const { inputs, expected } = publishedCase<{ x: number[]; lambda: number; L: number }, Limits>(
      'spc-montgomery-and-pistonrings',
      'viscosity-individuals-and-ewma',
    );
    const { mean, sigma, lower, upper } = individuals(inputs.x, 3, 1.128)!;
    near(mean, expected.mean, 1e-12);
    near(sigma, expected.sigmaFromMovingRange, 1e-12);
    allNear([lower, upper], expected.individualsLimits, 1e-12);
    allNear(ewma(inputs.x, inputs.lambda, mean), expected.ewma, 1e-12);
    const limits = steps(15).map((step) => {
      const half = ewmaHalfWidth(sigma, inputs.lambda, inputs.L, step);
      return [mean - half, mean + half];
    });
    allNear(limits.flat(), expected.ewmaLimits.flat(), 1e-11);
  });
});

describe('piston rings, 40 samples of 5 (R package qcc 2.7, L. Scrucca 2004)', () => {
  interface Means {
    xbarCentre: number;
    sigmaFromRange: number;
    sampleMeans: number[];
  }
  const base = publishedCase<object, Means>(
    'spc-montgomery-and-pistonrings',
    'pistonrings-xbar-r-s',
  ).expected;
  const sigmaOfMean = base.sigmaFromRange / Math.sqrt(5);

  test('EWMA of the means', () => {
    interface Averages {
      ewma: number[];
      limits: [number, number][];
      beyondLimits1Based: number[];
    }
    const { expected } = publishedCase<object, Averages>(
      'spc-montgomery-and-pistonrings',
      'pistonrings-ewma',
    );
    const averages = ewma(base.sampleMeans, 0.2, base.xbarCentre);
    allNear(averages, expected.ewma, 1e-12);
    const halves = steps(40).map((step) => ewmaHalfWidth(sigmaOfMean, 0.2, 3, step));
    allNear(
      halves.map((half) => base.xbarCentre - half),
      expected.limits.map(([lower]) => lower),
      1e-12,
    );
    const beyond = steps(40).filter((i) => Math.abs(averages[i - 1] - base.xbarCentre) > halves[i - 1]);
    expect(beyond).toEqual(expected.beyondLimits1Based);
  });

  test('CUSUM of the standardised means', () => {
    interface Sums {
      sHigh: number[];
      sLow: number[];
      beyondUpper1Based: number[];
    }
    const { expected } = publishedCase<object, Sums>('spc-montgomery-and-pistonrings', 'pistonrings-cusum');
    const scaled = base.sampleMeans.map((mean) => (mean - base.xbarCentre) / sigmaOfMean);
    const chart = cusum(scaled, { target: 0, k: 0.5, h: 5 });
    allWithin(chart.high, expected.sHigh, 1e-9);
    allWithin(chart.low, expected.sLow, 1e-9);
    expect(fromOne(chart.highSignals)).toEqual(expected.beyondUpper1Based);
    expect(chart.lowSignals).toEqual([]);
  });
});

describe('NIST e-Handbook 6.3.2.2, individuals chart of 10 flow rates', () => {
  interface Limits {
    mean: number;
    movingRanges: number[];
    meanMovingRange: number;
    sigmaEstimate: number;
    ucl: number;
    lcl: number;
    mrUcl: number;
    printed: { mean: number; meanMovingRange: number; ucl: number; lcl: number };
  }
  test('with the constant as printed', () => {
    const { inputs, expected } = publishedCase<{ x: number[]; d2: number }, Limits>(
      'nist-individuals-moving-range',
      'flow-rate',
    );
    const chart = individuals(inputs.x, 3, inputs.d2)!;
    near(chart.mean, expected.mean, 1e-12);
    allNear(chart.movingRanges, expected.movingRanges, 1e-12);
    near(chart.meanMovingRange, expected.meanMovingRange, 1e-12);
    near(chart.sigma, expected.sigmaEstimate, 1e-12);
    allNear([chart.lower, chart.upper], [expected.lcl, expected.ucl], 1e-12);
    // Its factor 3.267 is a rounded 3.2665.
    near(chart.movingRangeUpper, expected.mrUcl, 2e-4);
    const { printed } = expected;
    allWithin(
      [chart.mean, chart.meanMovingRange, chart.upper, chart.lower],
      [printed.mean, printed.meanMovingRange, printed.ucl, printed.lcl],
      1e-4,
    );
  });

  test('with the exact constant', () => {
    const { inputs, expected } = publishedCase<{ x: number[] }, Limits>(
      'nist-individuals-moving-range',
      'flow-rate-exact-d2',
    );
    const chart = individuals(inputs.x)!;
    allNear(
      [chart.lower, chart.upper, chart.sigma],
      [expected.lcl, expected.ucl, expected.sigmaEstimate],
      1e-12,
    );
  });
});
