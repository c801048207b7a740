import { labelOf, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import type { Condition } from '../condition.ts';
import type { Plant } from '../plant.ts';
import { referenceStroke } from '../referenceStroke.ts';
import type { FaultKind } from '../story.ts';
import { risesOf } from './risingDraw.ts';

function goesAllTheWay(plant: Plant, change: (condition: Condition) => void): boolean {
  return (
    referenceStroke(plant, change).endPart > 0.94 && referenceStroke(plant, change, 'retract').endPart < 0.06
  );
}

/** A sheared coupling: one motor turns freely all along, and the body drags its edge. */
const shearedCoupling: FaultKind = {
  name: 'sheared-coupling',
  wants: { couplings: ['pulses', 'loose', 'tight'], strong: true },
  draw(plant, _, onset, random) {
    const edge = random.whole(0, 1);
    const shear = (condition: Condition) => {
      condition.edges[edge].bare = { from: -1, to: plant.travelMetres + 1 };
    };
    const rises = risesOf(referenceStroke(plant), referenceStroke(plant, shear));
    if (rises[edge] > -0.5 || !goesAllTheWay(plant, shear)) return null;
    const label = labelOf(onset, {
      kind: 'dropped-load',
      side: plant.facts.sides[edge],
      severity: -rises[edge],
    });
    return { name: 'sheared-coupling', label, startsStroke: onset, services: [], apply: shear };
  },
};

/** A piece of rack has come loose: the gear finds nothing there. */
const bareRack: FaultKind = {
  name: 'bare-rack',
  wants: { couplings: ['pulses', 'loose', 'tight'], strong: true },
  draw(plant, _, onset, random) {
    const edge = random.whole(0, 1);
    const part = random.between(0.18, 0.5);
    const from = random.between(0.12, 0.88 - part);
    const lay = (condition: Condition) => {
      condition.edges[edge].bare = {
        from: from * plant.travelMetres,
        to: (from + part) * plant.travelMetres,
      };
    };
    if (!goesAllTheWay(plant, lay)) return null;
    const label = labelOf(onset, { kind: 'dropped-load', side: plant.facts.sides[edge], severity: part });
    return { name: 'bare-rack', label, startsStroke: onset, services: [], apply: lay };
  },
};

/** The only motor's clutch lets go for a part of each stroke. */
const slippingClutch: FaultKind = {
  name: 'slipping-clutch',
  wants: { couplings: ['one-motor'] },
  draw(plant, _, onset, random) {
    const part = random.between(0.12, 0.25);
    const label = labelOf(onset, { kind: 'dropped-load', side: namedSide(plant, null), severity: part });
    return {
      name: 'slipping-clutch',
      label,
      startsStroke: onset,
      services: [],
      apply(condition, own) {
        const atMetres = own.between(0.25, 0.7) * plant.travelMetres;
        const freeMetres = part * plant.travelMetres * own.between(0.8, 1.2);
        for (const edge of condition.edges) {
          edge.slips.push({ atMetres, climbMetres: 0.001, newtons: 0, freeMetres, inClutch: true });
        }
      },
    };
  },
};

export const DROPPED_LOAD = [shearedCoupling, bareRack, slippingClutch];
