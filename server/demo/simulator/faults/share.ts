import type { SimulatedRoom } from '../room.ts';
import {
  anySide,
  type FaultKind,
  type FaultSpan,
  namedSide,
  type PlannedFault,
  planFault,
  withAt,
} from './fault.ts';

interface ShareShift extends FaultSpan {
  /** The side that now works harder. */
  readonly sideIndex: number;
  /** How much of the whole room's load moves on to it. */
  readonly shift: number;
}

/** The sides are no longer timed alike: load moves from the others on to one side. */
export function shareShift(room: SimulatedRoom, fault: ShareShift): PlannedFault {
  const label = {
    kind: 'uneven-sides' as const,
    severity: fault.shift,
    side: namedSide(room, fault.sideIndex),
    alsoFits: ['rising-draw'] as const,
  };
  const others = room.motors.length - 1;
  return planFault('share-shift', fault, label, (condition) => ({
    ...condition,
    shareShift: condition.shareShift.map((value, side) =>
      side === fault.sideIndex ? value + fault.shift : value - fault.shift / others,
    ),
  }));
}

interface DroppedLoad extends FaultSpan {
  /** The side that lost its load. */
  readonly sideIndex: number;
  readonly from: number;
  readonly to: number;
  readonly keeps: number;
  readonly taken: number;
}

/** A gear or shoe no longer meshes over a stretch of the travel: the side idles and the other carries its load. */
function droppedLoad(room: SimulatedRoom, fault: DroppedLoad): PlannedFault {
  const whole = fault.from <= 0 && fault.to >= 1;
  const label = {
    kind: 'dropped-load' as const,
    severity: 1 - fault.keeps,
    side: namedSide(room, fault.sideIndex),
    position: whole ? null : (fault.from + fault.to) / 2,
    alsoFits: ['uneven-sides'] as const,
  };
  return planFault(whole ? 'dropped-load' : 'dropped-load-in-part', fault, label, (condition) => ({
    ...condition,
    drops: [...condition.drops, fault],
  }));
}

interface LateSide extends FaultSpan {
  readonly sideIndex: number;
  readonly lateS: number;
}

/** One side gets less voltage and nothing keeps it in step: it reaches its end late. */
function lateSide(room: SimulatedRoom, fault: LateSide): PlannedFault {
  const strokeS = room.facts.travelMetres / room.load.speedMetresPerS;
  const slower = fault.lateS / (strokeS + fault.lateS);
  const motor = room.motors[fault.sideIndex];
  const ohms = motor.windingOhms + motor.wireOhms;
  // Speed follows V - I R: the voltage must fall by less than the speed.
  const factor = 1 - slower * (1 - (room.runningAmps[fault.sideIndex] * ohms) / 12.6);
  const label = { kind: 'late-side' as const, severity: fault.lateS, side: namedSide(room, fault.sideIndex) };
  return planFault('late-side', fault, label, (condition) => ({
    ...condition,
    keepsStep: false,
    voltageFactors: withAt(condition.voltageFactors, fault.sideIndex, (value) => value * factor),
  }));
}

export const SHARE_FAULTS: readonly FaultKind[] = [
  {
    name: 'share-shift',
    kind: 'uneven-sides',
    leastSides: 2,
    draw: (room, random, onsetStroke) =>
      shareShift(room, { onsetStroke, sideIndex: anySide(room, random), shift: random.uniform(0.07, 0.16) }),
  },
  {
    name: 'dropped-load',
    kind: 'dropped-load',
    leastSides: 2,
    draw: (room, random, onsetStroke) =>
      droppedLoad(room, {
        onsetStroke,
        sideIndex: anySide(room, random),
        from: -1,
        to: 2,
        keeps: random.uniform(0.02, 0.1),
        taken: random.uniform(0.7, 1),
      }),
  },
  {
    name: 'dropped-load-in-part',
    kind: 'dropped-load',
    leastSides: 2,
    draw: (room, random, onsetStroke) => {
      const from = random.uniform(0.1, 0.55);
      return droppedLoad(room, {
        onsetStroke,
        sideIndex: anySide(room, random),
        from,
        to: from + random.uniform(0.18, 0.4),
        keeps: random.uniform(0.02, 0.1),
        taken: random.uniform(0.7, 1),
      });
    },
  },
  {
    name: 'late-side',
    kind: 'late-side',
    leastSides: 2,
    draw: (room, random, onsetStroke) => {
      const strokeS = room.facts.travelMetres / room.load.speedMetresPerS;
      const lateS = Math.max(strokeS * random.uniform(0.05, 0.1), random.uniform(0.7, 1.2));
      return lateSide(room, { onsetStroke, sideIndex: anySide(room, random), lateS });
    },
  },
];
