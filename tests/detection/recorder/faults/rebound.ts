import { namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import { loadFor } from '../condition.ts';
import { always, type FaultKind, plan } from './fault.ts';

/** Cleaned or lubricated, the room runs lighter, and is heavier again soon: the cause was not mended. */
export const rebound: FaultKind = {
  name: 'rebound',
  fits: always,
  draw(room, onsetStroke, random) {
    const serviceStroke = Math.max(70, onsetStroke);
    const climbsOver = random.whole(45, serviceStroke - 15);
    const startsStroke = serviceStroke - climbsOver;
    const before = random.between(0.15, 0.3);
    const rate = Math.log(1 + before) / climbsOver;
    const again = rate * random.between(2.5, 6);
    const most = Math.log(1 + before * random.between(1, 1.4));
    const kind = random.pick(['cleaned', 'lubricated'] as const);
    return plan(
      'rebound',
      room,
      {
        kind: 'draw-rebound',
        alsoFits: ['rising-draw'],
        severity: again,
        onsetStroke: serviceStroke,
        side: namedSide(room, null),
      },
      (condition, { index }) => {
        const risen =
          index < serviceStroke
            ? rate * (index - startsStroke + 1)
            : Math.min(most, again * (index - serviceStroke));
        return {
          ...condition,
          level: condition.level.map((level, side) => level * loadFor(room, side, Math.exp(risen) - 1)),
        };
      },
      { startsStroke, services: [{ beforeStroke: serviceStroke, kind, side: null }] },
    );
  },
};
