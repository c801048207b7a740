import type { Direction } from '../../../analysis/trace.ts';
import type { Camp } from './calendar.ts';
import type { Random } from './random.ts';

/** One drive of the room as its user meant it, before anything goes wrong. */
export interface Movement {
  readonly index: number;
  readonly campIndex: number;
  readonly camp: Camp;
  readonly direction: Direction;
  readonly atMs: number;
  readonly from: number;
  readonly to: number;
  readonly ambientC: number;
  /** A part of a movement only. */
  readonly broken: boolean;
}

/** Lays out so many strokes: out and in at each camp; seldom a half stroke that is gone on with after minutes. */
export function layOutMovements(
  camps: readonly Camp[],
  strokes: number,
  halves: number,
  random: Random,
): Movement[] {
  const movements: Movement[] = [];
  const push = (movement: Omit<Movement, 'index'>) =>
    movements.push({ ...movement, index: movements.length });
  camps.forEach((camp, campIndex) => {
    const ways = [
      { direction: 'extend', atMs: camp.arrivesAtMs, from: 0, to: 1, ambientC: camp.arrivalC },
      { direction: 'retract', atMs: camp.leavesAtMs, from: 1, to: 0, ambientC: camp.departureC },
    ] as const;
    for (const way of ways) {
      const common = { campIndex, camp };
      if (!random.chance(halves)) {
        push({ ...common, ...way, broken: false });
        continue;
      }
      const middle = random.between(0.25, 0.75);
      const later = way.atMs + random.whole(2, 12) * 60_000;
      push({ ...common, ...way, to: middle, broken: true });
      push({ ...common, ...way, from: middle, atMs: later, broken: true });
    }
  });
  return movements.slice(0, strokes);
}
