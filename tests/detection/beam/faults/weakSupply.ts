import { labelOf } from '../../../../server/demo/simulator/faults/fault.ts';
import type { Condition } from '../condition.ts';
import { type Reference, referenceStroke } from '../referenceStroke.ts';
import type { FaultKind } from '../story.ts';
import { solveSize } from './solve.ts';

/** The battery has aged and nothing charges it: little charge, much resistance. */
const agedBattery: FaultKind = {
  name: 'aged-battery',
  wants: { supply: 'any' },
  draw(plant, _, onset, random) {
    const restVolts = random.between(11.4, 11.9);
    const goal = random.between(9.4, 10.1);
    const age = (size: number) => (condition: Condition) => {
      condition.source.restVolts = restVolts;
      condition.source.chargerVolts = null;
      condition.source.internalFactor *= 1 + size;
    };
    const sensed = ({ batteryVolts, controllerVolts }: Reference) =>
      plant.logger.supply?.sense === 'battery' ? batteryVolts : controllerVolts;
    const measure = (size: number) => sensed(referenceStroke(plant, age(size)));
    const size = solveSize(measure, goal, 3, measure(0));
    if (size === null) return null;
    const label = labelOf(onset, { kind: 'weak-supply', severity: 12.6 - goal });
    return { name: 'aged-battery', label, startsStroke: onset, services: [], apply: age(size) };
  },
};

/** A ground that has corroded, seen by a logger at the controller. */
const badGround: FaultKind = {
  name: 'bad-ground',
  wants: { supply: 'controller' },
  draw(plant, _, onset, random) {
    const goal = random.between(9.6, 10.2);
    const corrode = (ohm: number) => (condition: Condition) => {
      condition.source.furtherFeedOhm += ohm;
    };
    const measure = (ohm: number) =>
      referenceStroke(plant, (condition) => {
        condition.source.chargerVolts = 13.2;
        corrode(ohm)(condition);
      }).controllerVolts;
    const drawn = plant.nominal.amps.reduce((sum, amps) => sum + amps, 0);
    const ohm = solveSize(measure, goal, 3 / drawn, measure(0));
    if (ohm === null) return null;
    const label = labelOf(onset, { kind: 'weak-supply', severity: 12.6 - goal });
    return { name: 'bad-ground', label, startsStroke: onset, services: [], apply: corrode(ohm) };
  },
};

export const WEAK_SUPPLY = [agedBattery, badGround];
