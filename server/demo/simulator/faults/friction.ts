import type { SimulatedRoom } from '../room.ts';
import {
  anySide,
  type FaultKind,
  type FaultSpan,
  loadFactor,
  namedSide,
  type PlannedFault,
  planFault,
  withAt,
} from './fault.ts';

/** No lubricant or dirt makes the current rise for ever. */
const GREATEST_RISE = 0.9;

interface FrictionRise extends FaultSpan {
  /** null: both sides alike. */
  readonly sideIndex: number | null;
  /** Rise of the running current at once, as a part of it. */
  readonly step: number;
  /** Rise with every stroke from then on. */
  readonly perStroke: number;
}

/** Friction that rises at once, stroke by stroke, or both: the running current goes up, the room slows. */
export function frictionRise(room: SimulatedRoom, rise: FrictionRise): PlannedFault {
  const name = rise.perStroke > 0 ? 'friction-drift' : 'friction-step';
  const label = {
    kind: 'rising-draw' as const,
    severity: rise.perStroke > 0 ? rise.perStroke : rise.step,
    side: namedSide(room, rise.sideIndex),
    alsoFits: rise.sideIndex === null ? [] : (['uneven-sides'] as const),
  };
  return planFault(name, rise, label, (condition, strokeIndex) => {
    const risen = Math.min(rise.step + rise.perStroke * (strokeIndex - rise.onsetStroke), GREATEST_RISE);
    const sideFactors = condition.sideFactors.map((factor, side) =>
      rise.sideIndex === null || rise.sideIndex === side ? factor * loadFactor(room, side, risen) : factor,
    );
    return { ...condition, sideFactors };
  });
}

interface HeavyRoom extends FaultSpan {
  /** null: the whole room weighs on its racks. */
  readonly sideIndex: number | null;
  /** Running current against the healthy one. */
  readonly times: number;
}

/** The racks carry the room's weight: far too much current from the first stroke on. */
export function heavyRoom(room: SimulatedRoom, heavy: HeavyRoom): PlannedFault {
  const label = {
    kind: 'heavy-room' as const,
    severity: heavy.times,
    side: namedSide(room, heavy.sideIndex),
  };
  return planFault('heavy-room', heavy, label, (condition) => {
    const heavier = (side: number, factor: number) => factor * loadFactor(room, side, heavy.times - 1);
    const sideFactors =
      heavy.sideIndex === null
        ? condition.sideFactors.map((factor, side) => heavier(side, factor))
        : withAt(condition.sideFactors, heavy.sideIndex, (factor) => heavier(heavy.sideIndex ?? 0, factor));
    return { ...condition, sideFactors };
  });
}

/** What a stalled motor would take against what it takes running. */
function stallRatio(room: SimulatedRoom): number {
  const [motor] = room.motors;
  return room.facts.nominalVolts / (motor.windingOhms + motor.wireOhms) / room.runningAmps[0];
}

export const FRICTION_FAULTS: readonly FaultKind[] = [
  {
    name: 'friction-step',
    kind: 'rising-draw',
    leastSides: 1,
    draw: (room, random, onsetStroke) =>
      frictionRise(room, { onsetStroke, sideIndex: null, step: random.uniform(0.12, 0.4), perStroke: 0 }),
  },
  {
    name: 'friction-step-one-side',
    kind: 'rising-draw',
    leastSides: 2,
    draw: (room, random, onsetStroke) =>
      frictionRise(room, {
        onsetStroke,
        sideIndex: anySide(room, random),
        step: random.uniform(0.15, 0.45),
        perStroke: 0,
      }),
  },
  {
    name: 'friction-drift',
    kind: 'rising-draw',
    leastSides: 1,
    draw: (room, random, onsetStroke) =>
      frictionRise(room, { onsetStroke, sideIndex: null, step: 0, perStroke: random.uniform(0.002, 0.006) }),
  },
  {
    name: 'friction-drift-one-side',
    kind: 'rising-draw',
    leastSides: 2,
    draw: (room, random, onsetStroke) =>
      frictionRise(room, {
        onsetStroke,
        sideIndex: anySide(room, random),
        step: 0,
        perStroke: random.uniform(0.003, 0.008),
      }),
  },
  {
    name: 'heavy-room',
    kind: 'heavy-room',
    leastSides: 1,
    draw: (room, random) => {
      const rated = room.facts.ratedAmps;
      const wished =
        rated === null ? random.uniform(2.2, 3.2) : (rated / room.runningAmps[0]) * random.uniform(1.3, 1.8);
      return heavyRoom(room, {
        onsetStroke: 0,
        sideIndex: null,
        times: Math.min(wished, 0.75 * stallRatio(room)),
      });
    },
  },
];
