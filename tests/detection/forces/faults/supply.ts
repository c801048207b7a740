import { type ForcesFaultKind, forcesFault } from './fault.ts';

/** A supply that comes to 8.8 to 10.2 V while the room runs; it can be told where the supply is recorded. */
const weak: ForcesFaultKind = {
  name: 'weak-supply',
  leastSides: 1,
  suits: ({ supply }) => supply !== null,
  draw(room, random, onset) {
    const severity = random.uniform(8.8, 10.2);
    const running = room.runningAmps.reduce((sum, own) => sum + (own.extend + own.retract) / 2, 0);
    const told = { kind: 'weak-supply', side: null, severity } as const;
    return forcesFault('weak-supply', onset, told, (condition, _, own) => ({
      ...condition,
      openVolts: severity + condition.supplyOhms * running + own.normal(0, 0.08),
    }));
  },
};

export const SUPPLY_FAULTS = [weak];
