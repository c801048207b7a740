import type { MeasureName } from '../measures.ts';
import type { Conditions } from './conditions.ts';
import { PRIORS } from './priors.ts';
import { fromScale, toScale } from './scale.ts';

/**
 * A measure's value brought to 12.6 V and 20 °C by what supply and temperature do as a rule, for as long as a room's own
 * normal does not tell; what was not recorded counts as being there. In the measure's own unit.
 */
export function adjustedAsARule(measure: MeasureName, [volts, degrees]: Conditions, value: number): number {
  const { perVolt, perDegree } = PRIORS[measure];
  const scaled = toScale(measure, value);
  return fromScale(measure, scaled - (volts ?? 0) * perVolt.mean - (degrees ?? 0) * perDegree.mean);
}
