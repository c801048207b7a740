import type { Random } from '../../../../server/demo/simulator/random.ts';
import { type ForcesSensing, withSensing } from '../condition.ts';
import type { ForcesRoom } from '../room.ts';
import { anySide, type ForcesFaultKind, forcesFault, leastAmps, SUITS_ALL, sideName } from './fault.ts';

/** A fault of one side's record: the current is what it was, and is written down wrongly. */
function recordFault(
  name: string,
  suits: (room: ForcesRoom) => boolean,
  draw: (
    room: ForcesRoom,
    side: number,
    random: Random,
  ) => (sensing: ForcesSensing) => Partial<ForcesSensing>,
): ForcesFaultKind {
  return {
    name,
    leastSides: 1,
    suits,
    draw(room, random, onset) {
      const side = anySide(room, random);
      const change = draw(room, side, random);
      const told = { kind: 'sensor-doubt', side: sideName(room, side), severity: 1 } as const;
      return forcesFault(name, onset, told, (condition) => withSensing(condition, side, change));
    },
  };
}

const rests = ({ restS }: ForcesRoom): boolean => restS.before + restS.after > 0;

/** All sides of a stroke share one clock, which here runs wrong. */
const clock: ForcesFaultKind = {
  name: 'record-clock',
  leastSides: 1,
  suits: SUITS_ALL,
  draw(room, random, onset) {
    const rateError = random.pick([0.5, 0.8, 1.25, 2]) * random.uniform(0.95, 1.05);
    const told = { kind: 'sensor-doubt', side: sideName(room, null), severity: rateError } as const;
    return forcesFault('record-clock', onset, told, (condition) => ({ ...condition, rateError }));
  },
};

/** Without a rest an offset cannot be told from friction in principle, so it is drawn for rooms that record one. */
export const RECORD_FAULTS = [
  recordFault('record-clipped', SUITS_ALL, (room, side, random) => {
    const rangeAmps = random.uniform(0.6, 0.9) * leastAmps(room, side);
    return () => ({ rangeAmps, bits: 10 });
  }),
  recordFault('record-offset', rests, (room, side, random) => {
    const zeroAmps = random.pick([-1, 1]) * Math.max(1.2, random.uniform(0.2, 0.6) * leastAmps(room, side));
    return () => ({ zeroAmps });
  }),
  recordFault('record-scale-down', SUITS_ALL, (_room, _side, random) => {
    const scale = random.uniform(0.45, 0.75);
    return ({ gain }) => ({ gain: gain * scale });
  }),
  recordFault('record-scale-up', SUITS_ALL, (_room, _side, random) => {
    const scale = random.uniform(1.3, 2);
    return ({ gain, rangeAmps }) => ({ gain: gain * scale, rangeAmps: 2 * rangeAmps });
  }),
  recordFault('record-gaps', SUITS_ALL, (_room, _side, random) => {
    const missed = random.uniform(0.2, 0.5);
    return () => ({ missed });
  }),
  recordFault('record-noise', SUITS_ALL, (room, side, random) => {
    const whiteAmps = random.uniform(0.35, 0.8) * leastAmps(room, side);
    return () => ({ whiteAmps });
  }),
  recordFault('record-off', SUITS_ALL, () => () => ({ off: true })),
  clock,
];
