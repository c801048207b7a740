import { namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import { changedAt } from '../condition.ts';
import { type FaultKind, hasTwoSides, plan } from './fault.ts';

/** A sheared key or a stripped gear: one motor turns alone, the other moves the whole room. */
export const droppedSide: FaultKind = {
  name: 'dropped-side',
  fits: hasTwoSides,
  draw(room, onsetStroke, random) {
    const faulty = random.whole(0, 1);
    const left = random.between(0, 0.12);
    const taken = random.between(0.45, 0.9);
    const ratio = loadRatio(room.motors[faulty], room.motors[1 - faulty]);
    return plan(
      'dropped-side',
      room,
      {
        kind: 'dropped-load',
        alsoFits: ['uneven-sides', 'rising-draw'],
        severity: 1 - left,
        onsetStroke,
        side: namedSide(room, faulty),
      },
      (condition) => ({
        ...condition,
        level: changedAt(
          changedAt(condition.level, faulty, (level) => level * left),
          1 - faulty,
          (level) => level * (1 + taken * ratio * (1 - left)),
        ),
        isLoose: (side) => side === faulty,
      }),
    );
  },
};

/** Teeth are missing over a stretch of one rack: its motor runs light there. */
export const droppedStretch: FaultKind = {
  name: 'dropped-stretch',
  fits: hasTwoSides,
  draw(room, onsetStroke, random) {
    const faulty = random.whole(0, 1);
    const left = random.between(0, 0.12);
    const taken = random.between(0.45, 0.9);
    const length = random.between(0.25, 0.55);
    const from = random.between(0.08, 0.92 - length);
    const ratio = loadRatio(room.motors[faulty], room.motors[1 - faulty]);
    const inside = (position: number) => position > from && position < from + length;
    return plan(
      'dropped-stretch',
      room,
      {
        kind: 'dropped-load',
        alsoFits: ['uneven-sides', 'rising-draw'],
        severity: 1 - left,
        onsetStroke,
        side: namedSide(room, faulty),
      },
      (condition) => ({
        ...condition,
        added: [
          ...condition.added,
          (side, position) => {
            if (!inside(position)) return 0;
            return side === faulty ? (left - 1) * condition.level[side] : taken * ratio * (1 - left);
          },
        ],
        isLoose: (side, position) => side === faulty && inside(position),
      }),
    );
  },
};

/** The only motor turns and the room stays where it is, until the user gives up. */
export const droppedMotor: FaultKind = {
  name: 'dropped-motor',
  fits: ({ motors }) => motors.length === 1,
  draw(room, onsetStroke, random) {
    const left = random.between(0, 0.08);
    return plan(
      'dropped-motor',
      room,
      { kind: 'dropped-load', severity: 1 - left, onsetStroke, side: namedSide(room, 0) },
      (condition) => ({
        ...condition,
        level: condition.level.map((level) => level * left),
        isLoose: () => true,
      }),
    );
  },
};

interface Loaded {
  readonly runningAmps: number;
  readonly noLoadAmps: number;
}

function loadRatio(from: Loaded, to: Loaded): number {
  return (from.runningAmps - from.noLoadAmps) / (to.runningAmps - to.noLoadAmps);
}
