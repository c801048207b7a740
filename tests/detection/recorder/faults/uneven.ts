import { namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import { changedAt, loadFor } from '../condition.ts';
import { type FaultKind, hasTwoSides, plan } from './fault.ts';

/** The room has gone out of square: one side carries what the other has shed. */
export const unevenShift: FaultKind = {
  name: 'uneven-shift',
  fits: hasTwoSides,
  draw(room, onsetStroke, random) {
    const harder = random.whole(0, 1);
    const rise = random.scaled(0.14, 0.35);
    const moved = rise * room.motors[harder].runningAmps;
    const fall = moved / room.motors[1 - harder].runningAmps;
    const least = 0.35 * (1 - room.motors[1 - harder].noLoadAmps / room.motors[1 - harder].runningAmps);
    const growsOver = random.pick([1, 1, 1, 10, 40]);
    return plan(
      'uneven-shift',
      room,
      {
        kind: 'uneven-sides',
        alsoFits: ['rising-draw'],
        severity: rise,
        onsetStroke,
        side: namedSide(room, harder),
      },
      (condition, { index }) => {
        const part = Math.min(1, (index - onsetStroke + 1) / growsOver);
        const raised = changedAt(
          condition.level,
          harder,
          (level) => level * loadFor(room, harder, part * rise),
        );
        const level = changedAt(
          raised,
          1 - harder,
          (own) => own * loadFor(room, 1 - harder, -part * Math.min(fall, least)),
        );
        return { ...condition, level };
      },
    );
  },
};
