import {
  type FaultKind,
  loadFactor,
  namedSide,
  type PlannedFault,
  planFault,
} from '../../../../server/demo/simulator/faults/fault.ts';
import type { SimulatedRoom } from '../../../../server/demo/simulator/room.ts';

const GREATEST_RISE = 0.9;

interface DrawRebound {
  /** When the draw begins to rise. */
  readonly onsetStroke: number;
  readonly perStroke: number;
  /** The stroke before which the room is lubricated. */
  readonly serviceStroke: number;
  /** What is left of the rise after the service. */
  readonly left: number;
  /** How much faster it climbs afterwards. */
  readonly faster: number;
}

/** A sticky product helps for a while and then holds the dirt: the draw falls, and climbs back faster than before. */
function drawRebound(room: SimulatedRoom, fault: DrawRebound): PlannedFault {
  const atService = fault.perStroke * (fault.serviceStroke - fault.onsetStroke);
  const label = {
    kind: 'draw-rebound' as const,
    alsoFits: ['rising-draw'] as const,
    severity: fault.perStroke * fault.faster,
    side: namedSide(room, null),
    onsetStroke: fault.serviceStroke,
  };
  const rise = (strokeIndex: number): number =>
    strokeIndex < fault.serviceStroke
      ? fault.perStroke * (strokeIndex - fault.onsetStroke)
      : fault.left * atService + fault.perStroke * fault.faster * (strokeIndex - fault.serviceStroke);
  return planFault(
    'draw-rebound',
    fault,
    label,
    (condition, strokeIndex) => ({
      ...condition,
      sideFactors: condition.sideFactors.map(
        (factor, side) => factor * loadFactor(room, side, Math.min(rise(strokeIndex), GREATEST_RISE)),
      ),
    }),
    [{ beforeStroke: fault.serviceStroke, kind: 'lubricated', side: null, notes: null }],
  );
}

export const REBOUND_FAULTS: readonly FaultKind[] = [
  {
    name: 'draw-rebound',
    kind: 'draw-rebound',
    leastSides: 1,
    draw: (room, random, onsetStroke) =>
      drawRebound(room, {
        onsetStroke,
        perStroke: random.uniform(0.004, 0.007),
        serviceStroke: onsetStroke + 2 * random.integer(20, 30),
        left: random.uniform(0.1, 0.4),
        faster: random.uniform(2.5, 4),
      }),
  },
];
