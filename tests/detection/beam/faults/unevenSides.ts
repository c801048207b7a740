import { labelOf } from '../../../../server/demo/simulator/faults/fault.ts';
import type { Condition } from '../condition.ts';
import { referenceStroke } from '../referenceStroke.ts';
import type { FaultKind } from '../story.ts';
import { risesOf } from './risingDraw.ts';
import { solveSize } from './solve.ts';

/** A roller that was lowered or has sunk: one edge carries what the other no longer does. */
const weightShift: FaultKind = {
  name: 'weight-shift',
  wants: { couplings: ['pulses', 'pulses', 'loose'] },
  draw(plant, _, onset, random) {
    const edge = random.whole(0, 1);
    const rise = random.between(0.12, 0.25);
    const change = (size: number) => (condition: Condition) => {
      condition.edges[edge].coulomb *= 1 + size;
      condition.edges[1 - edge].coulomb *= 1 - size;
    };
    const before = referenceStroke(plant);
    const rises = (size: number) => risesOf(before, referenceStroke(plant, change(size)));
    const size = solveSize((each) => rises(each)[edge], rise, rise * 1.5, 0);
    if (size === null || size > 0.6 || rises(size)[1 - edge] > -0.07) return null;
    const label = labelOf(onset, {
      kind: 'uneven-sides',
      alsoFits: ['rising-draw'],
      side: plant.facts.sides[edge],
      severity: rise,
    });
    return { name: 'weight-shift', label, startsStroke: onset, services: [], apply: change(size) };
  },
};

/** Worn brushes: more resistance, so one motor pulls less and the stiff body makes the other pull more. */
const wornBrushes: FaultKind = {
  name: 'worn-brushes',
  wants: { couplings: ['tight'] },
  draw(plant, _, onset, random) {
    const motor = random.whole(0, 1);
    const rise = random.between(0.12, 0.25);
    const change = (ohm: number) => (condition: Condition) => {
      condition.motors[motor].furtherOhm += ohm;
    };
    const before = referenceStroke(plant);
    const rises = (ohm: number) => risesOf(before, referenceStroke(plant, change(ohm)));
    const ohm = solveSize((each) => rises(each)[1 - motor], rise, plant.motors[motor].windingOhm * 0.4, 0);
    if (ohm === null || rises(ohm)[motor] > -0.06) return null;
    const label = labelOf(onset, {
      kind: 'uneven-sides',
      alsoFits: ['rising-draw'],
      side: plant.facts.sides[1 - motor],
      severity: rise,
    });
    return { name: 'worn-brushes', label, startsStroke: onset, services: [], apply: change(ohm) };
  },
};

export const UNEVEN_SIDES = [weightShift, wornBrushes];
