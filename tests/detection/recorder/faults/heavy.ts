import { namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import type { RecorderRoom } from '../room.ts';
import { always, type FaultKind, plan } from './fault.ts';

/** From the first day on far too much current: racks that carry what rollers should. */
export const heavyFromNew: FaultKind = {
  name: 'heavy-from-new',
  fits: always,
  draw(room, _, random) {
    const faulty = room.motors.length === 2 && random.chance(0.4) ? random.whole(0, 1) : null;
    const told = random.chance(0.75);
    const means = { extend: meanOf(room.courses.extend[0]), retract: meanOf(room.courses.retract[0]) };
    const heaviest = Math.max(means.extend, means.retract);
    const most = Math.max(...room.motors.map((motor) => motor.runningAmps));
    const rated = Math.ceil(most * heaviest * random.between(1.1, 1.3));
    const unrated = room.motors.length === 2 ? random.between(24, 32) : random.between(55, 75);
    const aim = told ? rated * random.between(1.5, 2.1) : unrated;
    const motors = room.motors.map((motor, side) => {
      if (faulty !== null && side !== faulty) return motor;
      const runningAmps = aim / Math.min(means.extend, means.retract);
      // Strong enough to move at all: it was wound for a stall at 2.6 times this current or more.
      return { ...motor, runningAmps, ohms: Math.min(motor.ohms, 12.6 / (2.6 * runningAmps)) };
    });
    const heavy = {
      ...room,
      motors,
      controller: { ...room.controller, limitAmps: motors.map(() => Number.POSITIVE_INFINITY) },
      facts: { ...room.facts, ratedAmps: told ? rated : null },
      places: {
        ...room.places,
        lineOhms: 0.4 / motors.reduce((sum, { runningAmps }) => sum + runningAmps, 0),
      },
    };
    const label = { kind: 'heavy-room', severity: aim / rated, onsetStroke: 0 } as const;
    return plan(
      'heavy-from-new',
      heavy,
      { ...label, side: namedSide(room, faulty) },
      (condition) => condition,
    );
  },
};

function meanOf(course: RecorderRoom['courses']['extend'][number]): number {
  return course.reduce((sum, factor) => sum + factor, 0) / course.length;
}
