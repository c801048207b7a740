import type { Random } from '../../../server/demo/simulator/random.ts';

/** How a room is lived with, and what sound things happen to it. Chances are per stay or per stroke. */
export interface Habits {
  /** Between two visits, days. */
  readonly gapDays: number;
  readonly winterDays: number;
  readonly pairsMost: number;
  /** Standard deviation of how far from level it stands. */
  readonly crookedRadians: number;
  readonly coldSnaps: number;
  readonly weakSpells: number;
  readonly strongSpells: number;
  readonly rezeros: number;
  readonly services: number;
  readonly pauseChance: number;
  readonly biteChance: number;
  readonly halfStopChance: number;
  readonly clockWrongChance: number;
  readonly newRateHz: number | null;
  readonly runsIn: number;
}

const RATES_HZ = [10, 20, 25, 40, 50, 100, 200];

/** `leastRateHz`: what a fault's short peaks need to be seen at all. */
export function drawHabits(random: Random, leastRateHz: number): Habits {
  const some = (chance: number, most: number) => (random.chance(chance) ? random.integer(1, most) : 0);
  const at = (chance: number, low: number, high: number) =>
    random.chance(chance) ? random.uniform(low, high) : 0;
  return {
    gapDays: random.logUniform(3, 20),
    winterDays: random.chance(0.5) ? random.uniform(50, 150) : 0,
    pairsMost: random.integer(1, 3),
    crookedRadians: random.uniform(0.0008, 0.0035),
    coldSnaps: some(0.4, 3),
    weakSpells: some(0.25, 2),
    strongSpells: some(0.2, 2),
    rezeros: some(0.3, 3),
    services: some(0.5, 4),
    pauseChance: at(0.4, 0.01, 0.06),
    biteChance: at(0.25, 0.01, 0.06),
    halfStopChance: at(0.25, 0.01, 0.04),
    clockWrongChance: at(0.15, 0.01, 0.05),
    newRateHz: random.chance(0.15) ? random.pick(RATES_HZ.filter((rate) => rate >= leastRateHz)) : null,
    runsIn: at(0.25, 0.02, 0.07),
  };
}
