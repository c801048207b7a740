import type { Random } from '../../../server/demo/simulator/random.ts';
import type { CableRoom } from './room.ts';

/** How the coach stands and is fed for the days that it stays at one place. */
export interface Stay {
  readonly tiltRadians: number;
  /** What standing nose up shifts from one side of the room to the other, as a part of its load. */
  readonly pitchPart: number;
  /** What the cupboards hold, against the usual. */
  readonly load: number;
  readonly openVolts: number;
  readonly rippleVolts: number;
}

/** Draws where a coach stands next, what is in its cupboards, and what it is plugged into. */
export function drawStay(room: CableRoom, random: Random, before: Stay | null, crookedRadians: number): Stay {
  const { converterChance, generatorChance, converterRippleVolts } = room.supply;
  const nominal = room.facts.nominalVolts / 12;
  const roll = random.chance(0.12) ? 2.2 : 1;
  const load = 1 + 0.8 * ((before?.load ?? 1) - 1) + random.normal(0, 0.025);
  const feed = random.uniform(0, 1);
  const isConverter = feed < converterChance;
  const isGenerator = !isConverter && feed < converterChance + generatorChance;
  const openVolts = isConverter
    ? random.uniform(13.2, 14.2)
    : isGenerator
      ? random.uniform(13, 14)
      : random.uniform(12.2, 12.9);
  return {
    tiltRadians: random.normal(0, crookedRadians * roll),
    pitchPart: random.normal(0, 2 * crookedRadians * roll),
    load: Math.max(0.85, Math.min(1.15, load)),
    openVolts: openVolts * nominal,
    rippleVolts: isConverter ? converterRippleVolts : isGenerator ? 1.6 * converterRippleVolts : 0,
  };
}
