import type { WormRoom } from './room.ts';

/** Degrees over which a film of grease or a seal's rubber becomes e times as stiff. */
const FOLDING_C = 18;

/** What the cold makes of the rubbing, 1 at 20 °C. */
export function filmStiffness({ filmStiffening }: WormRoom, celsius: number): number {
  return 1 + filmStiffening * (Math.exp((20 - celsius) / FOLDING_C) - 1);
}
