import type { MeasureName, SideMeasures } from '../measures.ts';
import { median } from '../statistics/median.ts';

/** A measure of less than this many steps of the sensor's converter cannot be measured. */
const FEWEST_STEPS: Readonly<Partial<Record<MeasureName, number>>> = { spreadAmps: 2, roughness: 0.5 };
/** How far a measure may be off because readings come in steps, as a part of a step. */
const STEP_ERROR: Readonly<Partial<Record<MeasureName, number>>> = { spreadAmps: 0.6, roughness: 0.2 };
/** With fewer readings at each level than this, the levels are not steps of the converter. */
const FEWEST_A_LEVEL = 3;
const SAME_AMPS = 1e-6;

const STEPS = new WeakMap<readonly (number | null)[], number>();

/**
 * The step between a coarse converter's readings, amperes, as a side's profile shows it: its medians then have a few
 * levels only. 0 where they have many, and where the profile is empty.
 */
export function stepAmpsOf({ profile }: Pick<SideMeasures, 'profile'>): number {
  let step = STEPS.get(profile);
  if (step === undefined) {
    step = stepOf(profile.filter((amps) => amps !== null));
    STEPS.set(profile, step);
  }
  return step;
}

function stepOf(amps: readonly number[]): number {
  const ranked = new Float64Array(amps).sort();
  const gaps: number[] = [];
  for (let i = 1; i < ranked.length; i++) {
    const gap = ranked[i] - ranked[i - 1];
    if (gap > SAME_AMPS) gaps.push(gap);
  }
  if (gaps.length === 0 || ranked.length < FEWEST_A_LEVEL * (gaps.length + 1)) return 0;
  return median(gaps);
}

/** Whether a measure is too small to be measured in the sensor's steps. */
export function isTooCoarse(measured: SideMeasures, measure: MeasureName, value: number): boolean {
  const fewest = FEWEST_STEPS[measure];
  return fewest !== undefined && value < fewest * stepAmpsOf(measured);
}

/** What the steps may add to a measure, a standard deviation on the scale of a ratio; 0 for what they do not touch. */
export function coarseSpread(measured: SideMeasures, measure: MeasureName, value: number): number {
  const error = STEP_ERROR[measure] ?? 0;
  return error === 0 || value <= 0 ? 0 : (error * stepAmpsOf(measured)) / value;
}
