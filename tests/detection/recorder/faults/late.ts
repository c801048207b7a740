import { namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import { changedAt } from '../condition.ts';
import { type FaultKind, hasTwoSides, plan } from './fault.ts';

/** One side falls behind: its gear slips under load, and what kept the sides in step does so no longer. */
export const lateSide: FaultKind = {
  name: 'late-side',
  fits: (room) => hasTwoSides(room) && room.logger.tailS >= 0,
  draw(room, onsetStroke, random) {
    const faulty = random.whole(0, 1);
    const lagS = Math.max(random.scaled(1, 4), 0.05 * room.durationS);
    const lag = Math.min(lagS, 0.25 * room.durationS);
    const slip = room.durationS / (room.durationS + lag);
    return plan(
      'late-side',
      room,
      {
        kind: 'late-side',
        alsoFits: ['uneven-sides'],
        severity: lag,
        onsetStroke,
        side: namedSide(room, faulty),
      },
      (condition, _, source) => ({
        ...condition,
        inStep: false,
        grip: changedAt(condition.grip, faulty, (grip) => grip * slip * (1 + 0.008 * source.normal())),
      }),
    );
  },
};
