import { PROFILE_BINS } from '../measures.ts';
import type { Profile } from './relativeProfile.ts';

/** Mean of the profiles in each bin; null where none has a sample. */
export function meanProfile(profiles: readonly Profile[]): (number | null)[] {
  return Array.from({ length: PROFILE_BINS }, (_, bin) => {
    const values = profiles.map((profile) => profile[bin]).filter((value) => value !== null);
    return values.length > 0 ? values.reduce((sum, value) => sum + value, 0) / values.length : null;
  });
}

/** The lowest and the highest of the profiles in each bin; null where none has a sample. */
export interface ProfileBand {
  readonly lower: (number | null)[];
  readonly upper: (number | null)[];
}

/** Between which profiles the strokes of a span lie. */
export function profileBand(profiles: readonly Profile[]): ProfileBand {
  const extreme = (of: (...values: number[]) => number) =>
    Array.from({ length: PROFILE_BINS }, (_, bin) =>
      profiles.reduce<number | null>((held, profile) => {
        const amps = profile[bin] ?? null;
        return amps === null ? held : held === null ? amps : of(held, amps);
      }, null),
    );
  return { lower: extreme(Math.min), upper: extreme(Math.max) };
}
