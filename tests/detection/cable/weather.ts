import type { Random } from '../../../server/demo/simulator/random.ts';

const DAY_MS = 86_400_000;
const YEAR_DAYS = 365.25;

/** A place's temperature over the years: seasons, weeks of weather, day and night. Common knowledge, no source. */
export function drawWeather(random: Random): (atMs: number) => number {
  const mean = random.uniform(8, 19);
  const swing = random.uniform(6, 13);
  const waves = [9, 17, 31].map((days) => ({
    days: days * random.uniform(0.8, 1.25),
    phase: random.uniform(0, 2 * Math.PI),
    kelvin: random.uniform(1, 2.8),
  }));
  return (atMs) => {
    const day = atMs / DAY_MS;
    // Coldest around the twentieth of January.
    let celsius = mean - swing * Math.cos((2 * Math.PI * (day - 20)) / YEAR_DAYS);
    for (const { days, phase, kelvin } of waves)
      celsius += kelvin * Math.sin((2 * Math.PI * day) / days + phase);
    return celsius + 4 * Math.sin(2 * Math.PI * (day - 0.375));
  };
}
