import type { RecorderRoom } from '../room.ts';
import { always, type FaultKind, plan } from './fault.ts';

function withSupply(room: RecorderRoom): RecorderRoom {
  return { ...room, logger: { ...room.logger, supplyRateHz: room.logger.supplyRateHz ?? 5 } };
}

/** Running current of all motors in the heavier direction. */
function totalAmps({ motors, courses }: RecorderRoom): number {
  const heavier = Math.max(courses.extend[0][200], courses.retract[0][200]);
  return 1.03 * heavier * motors.reduce((sum, { runningAmps }) => sum + runningAmps, 0);
}

/** A battery that has lost its charge: low before the start, lower with the load. */
export const flatBattery: FaultKind = {
  name: 'flat-battery',
  fits: always,
  draw(room, onsetStroke, random) {
    const aim = random.between(9.3, 10.2);
    const often = random.between(0.6, 1);
    const bearer = withSupply(room);
    const label = { kind: 'weak-supply', severity: aim / 12, onsetStroke } as const;
    return plan('flat-battery', bearer, label, (condition, { campIndex }) =>
      random.branch(`weak ${campIndex}`).chance(often)
        ? { ...condition, openVolts: aim + condition.lineOhms * totalAmps(room) }
        : condition,
    );
  },
};

/** A corroded joint on the way to the motors: whatever feeds it, the load draws it down. */
export const poorWiring: FaultKind = {
  name: 'poor-wiring',
  fits: always,
  draw(room, onsetStroke, random) {
    const aim = random.between(9.3, 9.9);
    const bearer = withSupply(room);
    const label = { kind: 'weak-supply', severity: aim / 12, onsetStroke } as const;
    return plan('poor-wiring', bearer, label, (condition) => ({
      ...condition,
      lineOhms: Math.max(condition.lineOhms, (12.6 - aim) / totalAmps(room)),
      openVolts: Math.min(condition.openVolts, 12.7),
    }));
  },
};
