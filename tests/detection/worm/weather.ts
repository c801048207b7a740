import type { Random } from '../../../server/demo/simulator/random.ts';

const YEAR_MS = 365.25 * 86_400_000;
const COLDEST_MS = Date.UTC(2021, 0, 20);

/** The air about a coach by the time of the year, the hour's and the week's chance included. */
export function drawClimate(random: Random): (atMs: number, random: Random) => number {
  const meanC = random.uniform(10, 20);
  const swingC = random.uniform(4, 12);
  return (atMs, chance) =>
    meanC - swingC * Math.cos((2 * Math.PI * (atMs - COLDEST_MS)) / YEAR_MS) + chance.normal(0, 3.5);
}
