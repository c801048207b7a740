import { labelOf, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import type { Condition } from '../condition.ts';
import { referenceStroke } from '../referenceStroke.ts';
import type { FaultKind } from '../story.ts';
import { meanOf, risesOf } from './risingDraw.ts';
import { solveSize } from './solve.ts';

/** A lubricant that eases the room at once and gums from then on, both as dry and as viscous drag. */
const gumming: FaultKind = {
  name: 'gumming-grease',
  wants: {},
  draw(plant, _, onset, random) {
    const fall = random.between(0.12, 0.22);
    const rate = random.between(0.006, 0.012);
    const ease = (size: number) => (condition: Condition) => {
      for (const edge of condition.edges) edge.coulomb *= 1 - size;
    };
    const before = referenceStroke(plant);
    const measure = (size: number) => -meanOf(risesOf(before, referenceStroke(plant, ease(size))));
    const size = solveSize(measure, fall, 1.4 * fall, 0);
    if (size === null || size > 0.7) return null;
    const label = labelOf(onset, {
      kind: 'draw-rebound',
      alsoFits: ['rising-draw'],
      side: namedSide(plant, null),
      severity: rate,
    });
    const most = 1.15 * fall;
    return {
      name: 'gumming-grease',
      label,
      startsStroke: onset,
      services: [{ beforeStroke: onset, kind: random.pick(['lubricated', 'cleaned'] as const), side: null }],
      apply(condition) {
        const regained = Math.min(most, rate * (condition.index - onset));
        ease(size * (1 - regained / fall))(condition);
        for (const edge of condition.edges) edge.viscous *= 1 + 1.5 * regained;
      },
    };
  },
};

export const DRAW_REBOUND = [gumming];
