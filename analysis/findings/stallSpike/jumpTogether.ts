import { ONE_PLACE } from './isEchoOf.ts';
import type { SpikedStroke } from './spikeMemory.ts';

/** Of the peaks of a side so many have one of the other beside them: where both come anywhere few do. A guess, no source. */
const TOGETHER = 0.8;
/** Teeth of two gears that meet by chance do so within this part of a turn in one room of three. */
const ONE_PHASE = 1 / 6;

/**
 * Whether a side peaks only where another one does, stroke by stroke. `own` and `others`: the latest strokes of each, oldest
 * first; `turn`: the part of the travel after which the peaks repeat, which not every turn shows, null where they do not.
 * False where one of the sides was not read on each of the other's strokes, true where no peak tells otherwise.
 */
export function jumpTogether(
  own: readonly SpikedStroke[],
  others: readonly SpikedStroke[],
  turn: number | null,
): boolean {
  if (own.length !== others.length) return false;
  const near = turn === null ? ONE_PLACE : Math.min(ONE_PLACE, ONE_PHASE * turn);
  const beside = own.flatMap(({ positions }, i) =>
    positions.map((position) => others[i].positions.some((at) => apart(at - position, turn) <= near)),
  );
  return beside.filter(Boolean).length >= TOGETHER * beside.length;
}

/** How far apart two peaks are, whole turns aside. */
function apart(distance: number, turn: number | null): number {
  return Math.abs(turn === null ? distance : distance - turn * Math.round(distance / turn));
}
