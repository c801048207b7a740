import type { Bump } from '../condition.ts';
import type { SimulatedRoom } from '../room.ts';
import { anySide, type FaultKind, type FaultSpan, namedSide, type PlannedFault, planFault } from './fault.ts';

interface BumpFault extends FaultSpan {
  readonly sideIndex: number;
  readonly widthMetres: number;
  /** Height in parts of the side's running load. */
  readonly part: number;
}

function labelOf(room: SimulatedRoom, fault: BumpFault) {
  return { kind: 'stall-spike' as const, severity: fault.part, side: namedSide(room, fault.sideIndex) };
}

/** A fastener stands proud and catches the bearing block: one place, both directions. */
export function proudFastener(
  room: SimulatedRoom,
  fault: BumpFault & { readonly position: number },
): PlannedFault {
  const label = { ...labelOf(room, fault), position: fault.position, pattern: 'same-place' as const };
  return planFault('proud-fastener', fault, label, (condition) => ({
    ...condition,
    bumps: [...condition.bumps, fault],
  }));
}

/** The travel of one turn of the gear. */
export function turnMetres(room: SimulatedRoom): number {
  return (room.facts.gearTeeth * room.facts.rackPitchMm) / 1000;
}

/** A tooth is broken or bent: a bump once a turn of the gear, wherever its turn stood at the start. */
export function badTooth(
  room: SimulatedRoom,
  fault: BumpFault & { readonly turnPart: number },
): PlannedFault {
  const travel = room.facts.travelMetres;
  const turn = turnMetres(room);
  const bumps: Bump[] = [];
  for (let metres = fault.turnPart * turn; metres < travel; metres += turn) {
    bumps.push({ ...fault, position: metres / travel });
  }
  const label = { ...labelOf(room, fault), pattern: 'once-per-turn' as const };
  return planFault('bad-tooth', fault, label, (condition) => ({
    ...condition,
    bumps: [...condition.bumps, ...bumps],
  }));
}

/** A gear that meshes now and then: it slips, then catches, anywhere. */
function looseMesh(room: SimulatedRoom, fault: BumpFault & { readonly most: number }): PlannedFault {
  const label = {
    ...labelOf(room, fault),
    pattern: 'scattered' as const,
    alsoFits: ['dropped-load', 'late-side'] as const,
  };
  return planFault('loose-mesh', fault, label, (condition, _strokeIndex, random) => {
    const bumps: Bump[] = [];
    const slips = random.integer(2, fault.most);
    for (let slip = 0; slip < slips; slip++) {
      const position = random.uniform(0.08, 0.92);
      const part = fault.part * random.uniform(0.7, 1.4);
      const behind =
        ((condition.direction === 'extend' ? -1 : 1) * fault.widthMetres) / room.facts.travelMetres;
      bumps.push({ ...fault, position, part }, { ...fault, position: position + behind, part: -0.7 });
    }
    return { ...condition, bumps: [...condition.bumps, ...bumps] };
  });
}

/** Wide enough that the motor's own inertia does not hide it, whatever the room's speed. */
function seenWidth(room: SimulatedRoom, metres: number): number {
  return Math.max(metres, room.load.speedMetresPerS * 0.2);
}

export const BUMP_FAULTS: readonly FaultKind[] = [
  {
    name: 'proud-fastener',
    kind: 'stall-spike',
    leastSides: 1,
    draw: (room, random, onsetStroke) =>
      proudFastener(room, {
        onsetStroke,
        sideIndex: anySide(room, random),
        position: random.uniform(0.12, 0.88),
        widthMetres: seenWidth(room, random.uniform(0.006, 0.014)),
        part: random.uniform(0.6, 2),
      }),
  },
  {
    name: 'bad-tooth',
    kind: 'stall-spike',
    leastSides: 1,
    draw: (room, random, onsetStroke) =>
      badTooth(room, {
        onsetStroke,
        sideIndex: anySide(room, random),
        turnPart: random.uniform(0.1, 0.9),
        widthMetres: Math.min(seenWidth(room, random.uniform(0.004, 0.01)), 0.4 * turnMetres(room)),
        part: random.uniform(0.6, 1.6),
      }),
  },
  {
    name: 'loose-mesh',
    kind: 'stall-spike',
    leastSides: 1,
    draw: (room, random, onsetStroke) =>
      looseMesh(room, {
        onsetStroke,
        sideIndex: anySide(room, random),
        most: random.integer(3, 6),
        widthMetres: seenWidth(room, random.uniform(0.006, 0.012)),
        part: random.uniform(0.8, 2),
      }),
  },
];
