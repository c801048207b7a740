import { median } from '../../statistics/median.ts';
import type { ChartDesign } from '../charts/chartStep.ts';
import { isOneWay, takeShift, tellsFor } from '../charts/shiftChart.ts';
import type { ShiftChart } from '../charts/shiftMemory.ts';
import type { FindingContext } from '../finding.ts';
import { mayBeThePlace } from '../stay.ts';
import { loadDesign, zeroLeft } from './loadDesign.ts';
import type { LoadMemory } from './loadMemory.ts';

/** A move of the share below 2 points is never a reason to call anybody, however quiet the room. */
const SHIFT = { kLeast: 0.02, hLeast: 0.09 };
/**
 * A larger move than this is more than the ground that a coach stands on does to the share, so that one stay is enough
 * to tell.
 */
const PLACE_SHIFT = 0.05;

/**
 * Takes one stroke into the charts of the share. Answers the side that took load from the other, and whether that shows
 * in this direction only; null: neither took any, or the room has not two sides with a known share.
 */
export function updateShare(
  context: FindingContext,
  memory: LoadMemory,
): { readonly taker: string; readonly oneWay: boolean } | null {
  const { state, direction } = context;
  const { sides } = state.room;
  const { share } = memory;
  const judged = sides.length === 2 ? context.residual(sides[0], 'share') : null;
  if (judged === null) return null;
  const zero = zeroLeft(state, sides, judged, (way) => share.ways[way].shifts);
  const all = loadDesign({ ...judged, zero }, SHIFT, judged.unrecorded);
  const { k, h } = loadDesign(judged, SHIFT, judged.unrecorded);
  const ofWay = { k: k + SHIFT.kLeast, h };
  // Measured from the fixed reference and not from a level that follows it, because a share that creeps is looked for.
  const move = judged.rise;
  takeShift(share, direction, move, { all, ofWay });
  share.deviation = judged.deviation;
  noteMoving(memory);
  const strokes = state.stay.strokes - state.stay.parts - state.stay.joined;
  const tells = (chart: ShiftChart, design: ChartDesign) => {
    const run = tellsFor(chart, move, design);
    if (run === 0) return false;
    return !mayBeThePlace({ strokes }, run) || Math.abs(median(chart.shifts.slice(-run))) >= PLACE_SHIFT;
  };
  const taker = move > 0 ? sides[0] : sides[1];
  const oneWay = isOneWay(share, direction);
  if (oneWay && tells(share.ways[direction], ofWay)) return { taker, oneWay: true };
  return tells(share.all, all) ? { taker, oneWay: false } : null;
}

/**
 * Takes the latest rises into the sums since the share began to move. Summing over all of them evens out what both
 * sides have in common for some strokes (unrecorded weather, another supply), which would make a load that grew on one
 * side look like one that moved.
 */
function noteMoving(memory: LoadMemory): void {
  const run = Math.max(memory.share.all.upRun, memory.share.all.downRun);
  memory.moving = run === 0 ? 0 : run === 1 ? 1 : memory.moving + 1;
  for (const load of Object.values(memory.sides)) {
    const latest = load.rises.at(-1) ?? 0;
    load.sinceMoving = memory.moving > 1 ? load.sinceMoving + latest : latest;
  }
}
