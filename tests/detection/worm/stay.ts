import type { Random } from '../../../server/demo/simulator/random.ts';
import type { Habits } from './habits.ts';
import type { WormRoom } from './room.ts';

/** What the ground of one stay adds to each side's push: along the travel (against the extend), and across it. */
export interface Ground {
  readonly pull: readonly number[];
  readonly cross: readonly number[];
}

export function drawGround(random: Random, { tilt }: Habits, sideCount: number): Ground {
  const along = bounded(random) * tilt;
  const across = sideCount === 2 ? bounded(random) * tilt * 0.6 : 0;
  return {
    pull: Array.from({ length: sideCount }, () => along),
    cross: Array.from({ length: sideCount }, (_, at) => (at === 0 ? across : -across)),
  };
}

/** What a stay's supply is before the room draws from it. */
export interface Source {
  readonly openVolts: number;
  readonly addedOhm: number;
}

/** A battery somewhere between full and low, a charger that holds it up, or the engine running. */
export function drawSource(random: Random, { supplies }: Habits, room: WormRoom): Source {
  const scale = room.facts.nominalVolts / 12;
  const kind =
    supplies === 'mixed'
      ? random.pick(['battery', 'battery', 'charger', 'engine'] as const)
      : supplies === 'weak'
        ? random.pick(['low', 'low', 'battery'] as const)
        : random.pick(['charger', 'engine'] as const);
  const openVolts = {
    low: random.uniform(11.7, 12.3),
    battery: random.uniform(12.2, 12.9),
    charger: random.uniform(13, 13.7),
    engine: random.uniform(13.8, 14.3),
  }[kind];
  return { openVolts: openVolts * scale, addedOhm: room.wiring.ohm * random.uniform(0, 0.3) };
}

/** A normal deviate that stays within what a driver would park on. */
function bounded(random: Random): number {
  return Math.max(-2.2, Math.min(2.2, random.normal(0, 1)));
}
