import { median } from '../statistics/median.ts';

/** A stretch of drive between rests. */
export interface Piece {
  readonly drivenS: number;
  /** Whether the motor stalled when it was switched off. */
  readonly stalled: boolean;
  /** How long the rest before it lasts, seconds. */
  readonly restS: number;
}

/** Strokes of one room, out and in, last at least this part of the longest; guesses, as are the next two, no source. */
const ALIKE_PART = 0.7;
const FEWEST_ALIKE = 3;
/** Pieces that are alike are strokes only where they make so much of all that is driven: broken-off ones are of any length. */
const LEAST_ALIKE_PART = 0.8;
/** Where rooms meet a stop at one of their ends alone, about so many of the strokes end in a stall: one stopped twice ends in one. */
const LEAST_STALLED_PART = 0.4;
/** Who inches a room along presses alike, too, but no room is out so soon, seconds. */
const SHORTEST_WHOLE_S = 8;
/** After a stall, a rest of so long and a drive of so large a part of the last one are the way back, not another press at the stop. */
const SHORTEST_TURN_S = 2;
const LEAST_WAY_BACK = 0.5;
/** No stroke lasts so many times as long as others. */
const LONGEST_TIMES = 3;
/** Nor is one stopped so often: a recording full of interference must not take long to part. */
const MOST_PIECES = 40;

/**
 * How long a stroke of the recording is driven, seconds: as its pieces, where they are alike, or as what there is up to
 * each stall. Null where neither tells.
 */
export function usualStrokeS(stretches: readonly (readonly Piece[])[]): number | null {
  const pieces = stretches.flat();
  const usualS = usualOf(pieces.map(({ drivenS }) => drivenS));
  const whole = pieces.filter(({ drivenS }) => drivenS >= ALIKE_PART * (usualS ?? 0));
  const stalled = whole.filter((piece) => piece.stalled).length;
  const endAlike = stalled === 0 || stalled >= LEAST_STALLED_PART * whole.length;
  return usualS !== null && endAlike ? usualS : usualOf(stretches.flatMap(upToStalls));
}

function usualOf(lengthsS: readonly number[]): number | null {
  const longest = lengthsS.reduce((most, lengthS) => Math.max(most, lengthS), 0);
  const all = lengthsS.reduce((sum, lengthS) => sum + lengthS, 0);
  const alike = lengthsS.filter((lengthS) => lengthS >= ALIKE_PART * longest);
  const ofAlike = alike.reduce((sum, lengthS) => sum + lengthS, 0);
  const areStrokes = alike.length >= FEWEST_ALIKE && ofAlike >= LEAST_ALIKE_PART * all;
  return areStrokes && longest >= SHORTEST_WHOLE_S ? median(alike) : null;
}

function upToStalls(pieces: readonly Piece[]): number[] {
  const lengthsS = [0];
  for (const { drivenS, stalled } of pieces) {
    lengthsS[lengthsS.length - 1] += drivenS;
    if (stalled) lengthsS.push(0);
  }
  return lengthsS.filter((lengthS) => lengthS > 0);
}

/**
 * Which of some pieces in a row, with short rests between, begin a stroke, in order. Where it is known how long a stroke
 * lasts, so that each comes nearest to that; else after a stall, from which only the way back leads.
 */
export function strokesOfPieces(pieces: readonly Piece[], usualS: number | null): number[] {
  return usualS === null ? afterStalls(pieces) : asLongAs(pieces, usualS);
}

function afterStalls(pieces: readonly Piece[]): number[] {
  const begins = [0];
  let drivenS = 0;
  for (const [i, piece] of pieces.entries()) {
    const isBack = piece.restS >= SHORTEST_TURN_S && piece.drivenS >= LEAST_WAY_BACK * drivenS;
    if (i > 0 && pieces[i - 1].stalled && isBack) {
      begins.push(i);
      drivenS = 0;
    }
    drivenS += piece.drivenS;
  }
  return begins;
}

/** The best way to part the pieces, built from the best of all that come before. */
function asLongAs(pieces: readonly Piece[], usualS: number): number[] {
  const cost = [0];
  const beginOf = [0];
  for (let end = 1; end <= pieces.length; end++) {
    cost[end] = Number.POSITIVE_INFINITY;
    let drivenS = 0;
    for (let begin = end - 1; begin >= Math.max(0, end - MOST_PIECES); begin--) {
      drivenS += pieces[begin].drivenS;
      const isTooLong = drivenS > LONGEST_TIMES * usualS;
      if (isTooLong && begin < end - 1) break;
      // In parts of either: half and double are as far off.
      const off = Math.abs(Math.log(Math.max(drivenS, Number.EPSILON) / usualS));
      if (cost[begin] + off >= cost[end]) continue;
      cost[end] = cost[begin] + off;
      beginOf[end] = begin;
    }
  }
  const begins: number[] = [];
  for (let end = pieces.length; end > 0; end = beginOf[end]) begins.push(beginOf[end]);
  return begins.reverse();
}
