import type { ComparedGroup } from '../api/types.ts';

/** From where to where a picture of currents goes, in amperes; its middle is round as well. */
export interface ProfileScale {
  readonly bottom: number;
  readonly top: number;
}

/** Half the picture, in tenths of a power of ten: its ends and its middle are multiples of it. */
const ROUND_HALVES = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];

/**
 * The narrowest round scale that holds the lowest and the highest stroke: one for all pictures, so that they can be
 * compared by eye. It begins above 0 where all currents are far from it, else a change would be a hair's breadth.
 */
export function profileScale(groups: readonly ComparedGroup[]): ProfileScale {
  const known = groups
    .flatMap(({ bandBefore, bandAfter }) => [bandBefore, bandAfter])
    .flatMap(({ lower, upper }) => [...lower, ...upper])
    .filter((amps) => amps !== null);
  const low = known.reduce((least, amps) => Math.min(least, amps), Number.POSITIVE_INFINITY);
  const high = known.reduce((most, amps) => Math.max(most, amps), 0.1);
  const begin = Math.max(0, Math.min(low, high));
  const power = 10 ** Math.floor(Math.log10((high - begin) / 2 || high / 2));
  for (const half of [...ROUND_HALVES, ...ROUND_HALVES.map((each) => 10 * each)]) {
    const step = half * power;
    const bottom = step * Math.floor(begin / step);
    // Tenths of tenths add up to a little more than they are.
    if (bottom + 2 * step >= high * (1 - 1e-9)) return { bottom, top: bottom + 2 * step };
  }
  return { bottom: 0, top: high };
}
