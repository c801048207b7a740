import { labelOf, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import type { Condition } from '../condition.ts';
import { referenceStroke } from '../referenceStroke.ts';
import type { FaultKind } from '../story.ts';
import { solveSize } from './solve.ts';

/** Rollers that do not carry: the racks bear the weight from the first stroke on, on both edges or on one. */
function weightOnRacks(rated: boolean): FaultKind {
  const name = rated ? 'weight-on-racks' : 'weight-unrated';
  return {
    name,
    wants: { strong: true, rated },
    draw(plant, _, _onset, random) {
      const { ratedAmps } = plant.facts;
      const one = rated && ['pulses', 'loose'].includes(plant.control.coupling) && random.chance(0.4);
      const edge = one ? random.whole(0, 1) : null;
      const unrated = plant.motors.length === 2 ? random.between(18, 26) : random.between(45, 60);
      const goal = ratedAmps === null ? unrated : ratedAmps * random.between(1.3, 1.8);
      const weigh = (size: number) => (condition: Condition) => {
        for (const [at, state] of condition.edges.entries()) {
          if (edge === null || at === edge) state.coulomb *= 1 + size;
        }
      };
      const before = referenceStroke(plant);
      const measured = (size: number) => {
        const { amps } = referenceStroke(plant, weigh(size));
        return edge === null ? Math.min(...amps) : amps[edge];
      };
      const usual = edge === null ? Math.min(...before.amps) : before.amps[edge];
      const size = solveSize(measured, goal, 1.5 * (goal / usual - 1), usual, 6);
      if (size === null) return null;
      const after = referenceStroke(plant, weigh(size));
      if (after.endPart < 0.96) return null;
      if (edge !== null && after.amps[1 - edge] > 0.9 * (ratedAmps ?? 0)) return null;
      const label = labelOf(0, {
        kind: 'heavy-room',
        side: edge === null ? namedSide(plant, null) : plant.facts.sides[edge],
        severity: goal / usual,
      });
      return { name, label, startsStroke: 0, services: [], apply: weigh(size) };
    },
  };
}

export const HEAVY_ROOM = [weightOnRacks(true), weightOnRacks(false)];
