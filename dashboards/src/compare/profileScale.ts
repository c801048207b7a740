import type { ComparedGroup } from '../api/types.ts';
import { roundScale, type Scale } from '../small/roundScale.ts';

/**
 * The scale, amperes, that holds the lowest and the highest stroke: one for all pictures, so that they can be
 * compared by eye. It begins above 0 where all currents are far from it, else a change would be a hair's breadth.
 */
export function profileScale(groups: readonly ComparedGroup[]): Scale {
  const known = groups
    .flatMap(({ bandBefore, bandAfter }) => [bandBefore, bandAfter])
    .flatMap(({ lower, upper }) => [...lower, ...upper])
    .filter((amps) => amps !== null);
  const low = known.reduce((least, amps) => Math.min(least, amps), Number.POSITIVE_INFINITY);
  const high = known.reduce((most, amps) => Math.max(most, amps), 0.1);
  return roundScale(Math.max(0, Math.min(low, high)), high);
}
