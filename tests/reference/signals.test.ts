import { describe, expect, test } from 'vitest';
import { downsample, largestTriangles } from '../../analysis/statistics/downsample.ts';
import { goertzel } from '../../analysis/statistics/goertzel.ts';
import { hampelFilter } from '../../analysis/statistics/hampelFilter.ts';
import { peaks } from '../../analysis/statistics/peaks.ts';
import { savitzkyGolay, savitzkyGolayCoefficients } from '../../analysis/statistics/savitzkyGolay.ts';
import { allNear, allWithin, near } from './values/near.ts';
import { published, publishedCase } from './values/read.ts';

describe('Hampel filter (R package pracma 2.4.2, hampel)', () => {
  interface Inputs {
    x: number[];
    halfWindow: number;
    threshold: number;
    constant: number;
  }
  test.each(published<Inputs, { flagged1Based: number[]; y: number[] }>('hampel-filter'))(
    '$id',
    ({ inputs: { x, ...options }, expected }) => {
      const { values, replaced } = hampelFilter(x, options);
      expect(replaced.map((index) => index + 1)).toEqual(expected.flagged1Based);
      allWithin(values, expected.y, 1e-9);
    },
  );
});

describe('Savitzky-Golay (A. Savitzky, M. J. E. Golay 1964, integer tables; scipy 1.10.1)', () => {
  interface Inputs {
    x: number[];
    window: number;
    polynomialOrder: number;
    derivative?: number;
    position0Based?: number;
  }
  interface Table {
    integers: number[];
    divisor: number;
  }
  const tables = published<Inputs, Table>('dsp-savitzky-golay', (id) =>
    /^(smooth|first|second|edge)/.test(id),
  );
  test.each(tables)(
    '$id',
    ({ inputs: { window, polynomialOrder: order, derivative, position0Based }, expected }) => {
      const place = position0Based ?? (window - 1) / 2;
      allWithin(
        savitzkyGolayCoefficients({ window, order, derivative }, place),
        expected.integers.map((integer) => integer / expected.divisor),
        1e-12,
      );
    },
  );

  const filtered = published<Inputs, { interp: number[]; printed?: number[] }>(
    'dsp-savitzky-golay',
    (id) => id === 'scipy-doc-example' || id === 'nile-11-2',
  );
  test.each(filtered)('$id', ({ inputs: { x, window, polynomialOrder: order }, expected }) => {
    const smooth = savitzkyGolay(x, { window, order });
    allNear(smooth, expected.interp, 1e-10);
    if (expected.printed) allWithin(smooth, expected.printed, 0.0051);
  });
});

describe('Goertzel (definition at 40 digits, numpy)', () => {
  const sequences = published<{ x: number[] }, { dft: [number, number][]; energyTime: number }>(
    'dsp-dft-goertzel',
    (id) => !/^(goertzel|windows|welch)/.test(id),
  );
  test.each(sequences)('every bin of $id', ({ inputs: { x }, expected }) => {
    let energy = 0;
    expected.dft.forEach(([real, imaginary], k) => {
      const tone = goertzel(x, k / x.length);
      allWithin([tone.real, tone.imaginary], [real, imaginary], 1e-11);
      energy += tone.power / x.length;
    });
    near(energy, expected.energyTime, 1e-11);
  });

  test.each(['goertzel-bins', 'goertzel-two-tones'])('%s', (id) => {
    const { inputs, expected } = publishedCase<{ x: number[]; sampleRate: number }, { rows: number[][] }>(
      'dsp-dft-goertzel',
      id,
    );
    for (const [frequency, power, amplitude] of expected.rows) {
      const tone = goertzel(inputs.x, frequency / inputs.sampleRate);
      expect(Math.abs(tone.power - power)).toBeLessThanOrEqual(1e-8 * power + 1e-9);
      if (amplitude > 1e-6) near(tone.amplitude, amplitude, 1e-8);
    }
  });
});

describe('peaks (scipy.signal.find_peaks, peak_prominences, peak_widths 1.10.1)', () => {
  interface Described {
    peaks0Based: number[];
    prominences: number[];
    widthsHalf: number[];
    leftIps: number[];
    rightIps: number[];
    widthsFull: number[];
  }
  const cases = published<{ x: number[] }, Described>(
    'dsp-peaks',
    (id) => !/^(scipy-doc|nile-filters)/.test(id),
  );
  test.each(cases)('$id', ({ inputs: { x }, expected }) => {
    const found = peaks(x);
    expect(found.map(({ index }) => index)).toEqual(expected.peaks0Based);
    allWithin(
      found.map(({ prominence }) => prominence),
      expected.prominences,
      1e-9,
    );
    allWithin(
      found.map(({ width }) => width),
      expected.widthsHalf,
      1e-9,
    );
    allWithin(
      found.map(({ left }) => left),
      expected.leftIps,
      1e-9,
    );
    allWithin(
      found.map(({ right }) => right),
      expected.rightIps,
      1e-9,
    );
    const atBase = peaks(x, { levelShare: 1 });
    allWithin(
      atBase.map(({ width }) => width),
      expected.widthsFull,
      1e-9,
    );
  });

  test('documentation example of peak_prominences', () => {
    const { expected } = publishedCase<object, Described & { printedProminences: number[] }>(
      'dsp-peaks',
      'scipy-doc-two-sines',
    );
    const found = peaks(
      Float64Array.from({ length: 1000 }, (_, i) => {
        const t = (6 * Math.PI * i) / 999;
        return Math.sin(t) + 0.6 * Math.sin(2.6 * t);
      }),
    );
    expect(found.map(({ index }) => index)).toEqual(expected.peaks0Based);
    allWithin(
      found.map(({ prominence }) => prominence),
      expected.prominences,
      1e-9,
    );
    allWithin(
      found.map(({ prominence }) => prominence),
      expected.printedProminences,
      6e-9,
    );
  });

  test('filters by prominence, distance, height and width', () => {
    const { inputs, expected } = publishedCase<{ x: number[] }, Record<string, number[]>>(
      'dsp-peaks',
      'nile-filters',
    );
    const indices = (options: Parameters<typeof peaks>[1]) =>
      peaks(inputs.x, options).map(({ index }) => index);
    expect(indices({ minimumProminence: 200 })).toEqual(expected.prominence200);
    expect(indices({ minimumDistance: 10 })).toEqual(expected.distance10);
    expect(indices({ minimumHeight: 1100 })).toEqual(expected.height1100);
    expect(indices({ minimumProminence: 150, minimumWidth: 2 })).toEqual(expected.prominence150Width2);
  });
});

describe('thinning', () => {
  const cases = published<{ y: number[]; threshold: number }, { indices0Based: number[] }>(
    'dsp-downsampling',
    (id) => id.startsWith('lttb'),
  );
  test.each(cases)('$id (S. Steinarsson 2013, the author’s own program)', ({ inputs, expected }) => {
    const x = inputs.y.map((_, i) => i);
    expect(largestTriangles(x, inputs.y, inputs.threshold)).toEqual(expected.indices0Based);
  });

  test('minimum and maximum of each bucket', () => {
    const { inputs, expected } = publishedCase<{ y: number[]; buckets: number }, { indices0Based: number[] }>(
      'dsp-downsampling',
      'min-max-nile-10-buckets',
    );
    expect(downsample(inputs.y, inputs.buckets)).toEqual(expected.indices0Based);
  });
});
