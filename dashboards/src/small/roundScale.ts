/** From where to where a picture goes; its middle is round as well. */
export interface Scale {
  readonly bottom: number;
  readonly top: number;
}

/** Half the picture, in tenths of a power of ten: its ends and its middle are multiples of it. */
const ROUND_HALVES = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];

/** The narrowest round scale that holds both. */
export function roundScale(low: number, high: number): Scale {
  const power = 10 ** Math.floor(Math.log10((high - low) / 2 || Math.abs(high) / 2 || 1));
  for (const half of [...ROUND_HALVES, ...ROUND_HALVES.map((each) => 10 * each)]) {
    const step = half * power;
    const bottom = step * Math.floor(low / step);
    // Tenths of tenths add up to a little more than they are.
    if (bottom + 2 * step >= high - Math.abs(high) * 1e-9) return { bottom, top: bottom + 2 * step };
  }
  return { bottom: low, top: high };
}
