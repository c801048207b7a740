import { ONE_PLACE } from './isEchoOf.ts';
import type { SpikedStroke } from './spikeMemory.ts';

/**
 * This part of a side's peaks have a peak of the other side beside them. Where both sides peak independently, few have.
 * A guess, no source.
 */
const TOGETHER = 0.8;
/** The phases of two gears lie within this part of a turn of each other by chance in one room of three. */
const ONE_PHASE = 1 / 6;

/**
 * Whether a side peaks only where another one does, stroke by stroke. `own` and `others`: the latest strokes of each,
 * oldest first. `turn`: the part of the travel after which peaks repeat (though not every turn shows one), null where
 * they do not. False where the sides were not read on the same number of strokes; true where there are no peaks.
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

/** How far apart two peaks are, parts of the travel, less whole turns. */
function apart(distance: number, turn: number | null): number {
  return Math.abs(turn === null ? distance : distance - turn * Math.round(distance / turn));
}
