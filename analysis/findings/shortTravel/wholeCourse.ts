import { mean, variance } from 'simple-statistics';
import { channelOf } from '../../roomState.ts';
import type { FindingContext } from '../finding.ts';

/** The whole course fits so much better, by its mean square, than any part of it. */
export const WHOLE_FITS_BETTER = 0.7;
/** Where a profile may have been cut: its parts before and after are the usual beginning and the usual end. */
const CUTS = [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8] as const;

/**
 * Whether a stroke that seems to have taken a `part` of its time shows both ends of the usual course, all of it squeezed
 * or a piece cut out of its middle, rather than its beginning or its end only.
 */
export function holdsBothEnds(context: FindingContext, part: number): boolean {
  return misfits(context, part, CUTS).every(({ whole, cut }) => whole < WHOLE_FITS_BETTER * cut);
}

/**
 * How the usual course, squeezed from end to end into a stroke that seems to have made a `part` of its way, fits beside the
 * same course without its beginning or its end: the ratio of the mean squares on the side where it fits worst, 1 where
 * nothing tells the two apart, less where the room went all the way, only faster. Null where no side has a usual course.
 */
export function squeezedOverCut(context: FindingContext, part: number): number | null {
  const ratios = misfits(context, part, [])
    .map(({ whole, cut }) => whole / cut)
    .filter((ratio) => Number.isFinite(ratio));
  return ratios.length === 0 ? null : Math.max(...ratios);
}

/**
 * Which end of the travel a stroke that seems to have made a `part` of its way lacks: how well the usual course without what
 * lies next to the room fully in fits it beside the one without what lies next to the room fully out, as the logarithm of
 * their mean squares' ratio. Above zero the outer end is missing, below zero the inner. Null where no side has a usual course.
 */
export function missingEnd({ state, analysis, direction }: FindingContext, part: number): number | null {
  const ratios = Object.entries(analysis.sides)
    .map(([side, { profile }]) => {
      const usual = channelOf(state, side, direction)?.profile ?? [];
      const withoutInner = misfit(profile, usual, (x) => 1 - (1 - x) * part);
      const withoutOuter = misfit(profile, usual, (x) => x * part);
      return Math.log(withoutInner / withoutOuter);
    })
    .filter((ratio) => Number.isFinite(ratio));
  return ratios.length === 0 ? null : mean(ratios);
}

/** By side, how far the course lies off the usual one as a whole, or without the middle at `cuts`, and without an end. */
function misfits(
  { state, analysis, direction }: FindingContext,
  part: number,
  cuts: readonly number[],
): { whole: number; cut: number }[] {
  return Object.entries(analysis.sides).map(([side, { profile }]) => {
    const usual = channelOf(state, side, direction)?.profile ?? [];
    const cutAt = (cut: number) => misfit(profile, usual, (x) => (x < cut ? x * part : 1 - (1 - x) * part));
    const whole = Math.min(
      misfit(profile, usual, (x) => x),
      ...cuts.map(cutAt),
    );
    return { whole, cut: Math.min(cutAt(0), cutAt(1)) };
  });
}

/** Mean square of a profile's difference from the usual one at `placeOf` each place, their levels aside. */
function misfit(
  profile: readonly (number | null)[],
  usual: readonly (number | null)[],
  placeOf: (x: number) => number,
): number {
  const bins = profile.length;
  const ratios: number[] = [];
  profile.forEach((amps, bin) => {
    const normal = usual[Math.min(bins - 1, Math.floor(placeOf((bin + 0.5) / bins) * bins))] ?? null;
    if (amps !== null && normal !== null && amps > 0 && normal > 0) ratios.push(Math.log(amps / normal));
  });
  if (ratios.length < bins / 2) return Number.POSITIVE_INFINITY;
  return variance(ratios);
}
