import type { MeasureName } from '../measures.ts';
import type { Conditions } from './conditions.ts';
import { PRIORS } from './priors.ts';
import { fromScale, toScale } from './scale.ts';

/**
 * A measure's value brought to 12.6 V and 20 °C by the slopes that hold for any room (`priors.ts`), for use until the room's own
 * normal tells them. A supply or temperature that was not recorded counts as being there already. In the measure's own unit.
 */
export function adjustedAsARule(measure: MeasureName, [volts, degrees]: Conditions, value: number): number {
  const { perVolt, perDegree } = PRIORS[measure];
  const scaled = toScale(measure, value);
  return fromScale(measure, scaled - (volts ?? 0) * perVolt.mean - (degrees ?? 0) * perDegree.mean);
}
