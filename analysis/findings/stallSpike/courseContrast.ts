import { median } from '../../statistics/median.ts';
import { rollingMedian } from '../../statistics/rollingMedian.ts';

/** What lies beside a place is so many bins of 64 to either side: a catch is narrower than half of that. */
const BESIDE = 6;

/**
 * By how much each bin of a stroke's profile departs from the usual one beside what the bins about it do, as a part of the
 * current: a level, a slope and a slow change of the course leave nothing. Friction adds to a course, and a supply or a cold
 * multiplies it: of what the usual course adds there by itself, so much as either way explains is taken off. 0 where one of the
 * two is not known; null where most are not.
 */
export function courseContrast(
  profile: readonly (number | null)[],
  usual: readonly (number | null)[],
): Float64Array | null {
  const ratios = new Float64Array(profile.length).fill(Number.NaN);
  const differences = new Float64Array(profile.length).fill(Number.NaN);
  const levels: number[] = [];
  for (let bin = 0; bin < profile.length; bin++) {
    const [amps, normal] = [profile[bin], usual[bin] ?? null];
    if (amps === null || normal === null || !(normal > 0)) continue;
    ratios[bin] = amps / normal;
    differences[bin] = amps - normal;
    levels.push(normal);
  }
  if (levels.length < profile.length / 2) return null;
  const level = median(levels);
  const ratiosBeside = rollingMedian(ratios, BESIDE);
  const differencesBeside = rollingMedian(differences, BESIDE);
  return ratios.map((ratio, bin) => {
    const times = ratio / ratiosBeside[bin] - 1;
    const plus = (differences[bin] - differencesBeside[bin]) / level;
    if (!(times * plus > 0)) return 0;
    return Math.abs(times) < Math.abs(plus) ? times : plus;
  });
}
