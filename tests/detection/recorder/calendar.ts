import type { Random } from './random.ts';
import type { Places } from './room.ts';

/** A stay at one place: the room goes out at the arrival and in at the departure. */
export interface Camp {
  readonly arrivesAtMs: number;
  readonly leavesAtMs: number;
  readonly arrivalC: number;
  readonly departureC: number;
  /** Days since the stay before. */
  readonly restedDays: number;
}

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;
const MINUTE_MS = 60_000;
const CAMPS_A_YEAR = 30;

/** Draws a history's stays, 30 a year, from spring to autumn or the year round, with their temperatures. */
export function drawCamps(count: number, places: Places, random: Random): Camp[] {
  const camps: Camp[] = [];
  const [opens, closes] = places.yearRound ? [0, 365] : [random.whole(60, 110), random.whole(280, 335)];
  const interval = (closes - opens) / CAMPS_A_YEAR;
  let year = random.whole(2020, 2023);
  let lastLeft = Date.UTC(year, 0, 1) + opens * DAY_MS - 20 * DAY_MS;
  while (camps.length < count) {
    const base = Date.UTC(year, 0, 1);
    for (let number = 0; number < CAMPS_A_YEAR && camps.length < count; number++) {
      const day = opens + Math.floor(interval * (number + random.between(0, 0.35)));
      const stays = Math.max(1, Math.floor(interval * random.between(0.15, 0.6)));
      const arrivesAtMs = Math.max(
        base + day * DAY_MS + random.between(13, 19) * HOUR_MS,
        lastLeft + 3 * HOUR_MS,
      );
      const leavesAtMs = arrivesAtMs + stays * DAY_MS - random.between(4, 9) * HOUR_MS;
      const season =
        places.meanC -
        places.swingC * Math.cos((2 * Math.PI * (day - 20)) / 365) +
        places.anomalyC * random.normal();
      camps.push({
        arrivesAtMs: Math.round(arrivesAtMs / MINUTE_MS) * MINUTE_MS + random.whole(0, 59) * 1000,
        leavesAtMs: Math.round(leavesAtMs / MINUTE_MS) * MINUTE_MS + random.whole(0, 59) * 1000,
        arrivalC: season + random.between(1, 6),
        departureC: season - random.between(0, 6),
        restedDays: (arrivesAtMs - lastLeft) / DAY_MS,
      });
      lastLeft = leavesAtMs;
    }
    year++;
  }
  return camps;
}
