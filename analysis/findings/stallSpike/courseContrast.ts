import { median } from '../../statistics/median.ts';
import { rollingMedian } from '../../statistics/rollingMedian.ts';

/** What lies beside a place is this many bins of 64 on either side: what catches is narrower than half of that. */
const BESIDE = 6;

/**
 * How much more each bin of a stroke's profile departs from the usual profile than the bins about it do, as a part of
 * the current. A changed level, a slope and a slow change of the course leave nothing. Friction adds to a course, while
 * a supply or the cold multiplies it: both are tried, and the smaller departure counts; where they disagree in sign,
 * none. 0 for a bin that one of the profiles lacks; null where most bins are lacking.
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
