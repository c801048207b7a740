import type { Direction } from '../../../analysis/trace.ts';
import { Random } from './random.ts';

/** One planned record of a stroke. */
export interface PlannedStroke {
  readonly index: number;
  readonly atMs: number;
  readonly direction: Direction;
  readonly camp: number;
  /** Part of its way at which the user lets go for good; null: none. */
  readonly stopsAtPart: number | null;
  /** A part of a movement only. */
  readonly broken: boolean;
  /** Days since the room last moved. */
  readonly restDays: number;
}

const DAY_MS = 86_400_000;

/** Camps of one to five days, thirty a year, of which a part have an interrupted stroke; with winters of storage. */
export function drawCalendar(
  seed: number,
  strokes: number,
  halvesPart: number,
  stores: boolean,
): PlannedStroke[] {
  const random = Random.of(seed, 11);
  const planned: PlannedStroke[] = [];
  let atMs = Date.UTC(2021, random.whole(0, 11), random.whole(1, 28), 15);
  let lastMs = atMs - 10 * DAY_MS;
  const storedAfter = stores ? random.whole(20, Math.floor(strokes / 2) - 10) : -1;
  for (let camp = 0; planned.length < strokes; camp++) {
    for (const direction of ['extend', 'retract'] as const) {
      const halved = planned.length > 24 && random.chance(halvesPart);
      const parts = halved ? [random.between(0.3, 0.7), null] : [null];
      for (const stopsAtPart of parts) {
        planned.push({
          index: planned.length,
          atMs,
          direction,
          camp,
          stopsAtPart,
          broken: halved,
          restDays: (atMs - lastMs) / DAY_MS,
        });
        lastMs = atMs;
        atMs += Math.round(random.between(60_000, 300_000));
      }
      atMs = Math.floor(atMs / DAY_MS) * DAY_MS + DAY_MS * (direction === 'extend' ? random.whole(1, 4) : 0);
      if (direction === 'extend') atMs += Math.round(random.between(8, 12) * 3_600_000);
    }
    atMs += DAY_MS * random.whole(6, 13) + Math.round(random.between(13, 20) * 3_600_000);
    if (camp === storedAfter) atMs += DAY_MS * random.whole(120, 200);
  }
  return planned.slice(0, strokes);
}
