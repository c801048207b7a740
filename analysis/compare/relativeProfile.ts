import { median } from '../statistics/median.ts';

/** Amps by bins of travel; null: no sample. */
export type Profile = readonly (number | null)[];

/**
 * A profile as parts of the stroke's own level, the median along its travel: a stroke that is heavier as a whole is no
 * change of a place, and a change of a place is none of the level. All null where the stroke has no level.
 */
export function relativeProfile(profile: Profile): Profile {
  const level = levelOf(profile);
  return profile.map((amps) => (amps === null || !(level > 0) ? null : amps / level));
}

/** Median along the travel, amperes; 0 where nothing was measured. */
function levelOf(profile: Profile): number {
  const known = profile.filter((amps) => amps !== null);
  return known.length === 0 ? 0 : median(known);
}
