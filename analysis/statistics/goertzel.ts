/** What a signal holds of one frequency. */
export interface Tone {
  /** Square of the magnitude of the sum, unscaled. */
  readonly power: number;
  /** Amplitude of a sine of that frequency, where whole periods fit (twice too large at 0 and half the rate). */
  readonly amplitude: number;
  readonly real: number;
  readonly imaginary: number;
}

/**
 * One frequency's term of the discrete Fourier sum, the sum of x(n) exp(-2 pi i f n), without working out the others.
 *
 * `values`: evenly spaced, no gaps; `frequency` in periods per sample (0 to 0.5; any other is read as its alias).
 * Nothing in answers zeros.
 *
 * Source: G. Goertzel (1958), An algorithm for the evaluation of finite trigonometric series; in the form of
 * C. Reinsch, which keeps its digits near frequency 0 (J. Stoer, R. Bulirsch, section 2.3.4).
 */
export function goertzel(values: ArrayLike<number>, frequency: number): Tone {
  const n = values.length;
  const angle = 2 * Math.PI * frequency;
  const nearZero = Math.cos(angle) > 0;
  const factor = nearZero ? -4 * Math.sin(angle / 2) ** 2 : 4 * Math.cos(angle / 2) ** 2;
  const sign = nearZero ? 1 : -1;
  let sum = 0;
  let step = 0;
  for (let i = n - 1; i >= 1; i--) {
    step = factor * sum + sign * step + values[i];
    sum = sign * sum + step;
  }
  // `sum` is now the last Clenshaw term; the first value closes the recurrence.
  const real = n === 0 ? 0 : values[0] + step * sign + (factor / 2) * sum;
  const imaginary = n === 0 ? 0 : -Math.sin(angle) * sum;
  const power = real * real + imaginary * imaginary;
  return { power, amplitude: n === 0 ? 0 : (2 * Math.sqrt(power)) / n, real, imaginary };
}
