import { standstillAmps } from '../../motor/turns.ts';
import { median } from '../../statistics/median.ts';
import { otherWay } from '../../trace.ts';
import type { FindingContext } from '../finding.ts';
import { SAME_SUPPLY_HOURS } from './travelMemory.ts';

/** What the current at standstill fell by is held against so many of the latest strokes: supplies of some stays. */
const SUPPLIES = 6;

/**
 * By how much the turns of a stroke may only seem to be `fewer`; both natural logarithms.
 *
 * A bad contact, and heat that nobody recorded, lower the current at standstill without slowing the room as a weak supply would.
 * They do so whatever the supply of the day, and make the turns of the way back seem as few: not where the turns became fewer
 * from one stroke to the next on the same standstill. A clamp that reads too little lowers the running current as well.
 *
 * Takes the stroke into the memory of standstills: once for each. `deviation`: of `fewer`, a standard deviation.
 */
export function seeminglyFewer(context: FindingContext, fewer: number, deviation: number): number {
  const { state, direction } = context;
  const { travel } = state;
  noteStandstill(context);
  noteStep(context, fewer, deviation);
  const byLatest = travel.fell.at(-1) ?? 0;
  const byStandstill = travel.fell.length > 0 ? Math.max(0, byLatest, median(travel.fell)) : 0;
  const back = Math.max(0, travel[otherWay(direction)].fewer ?? 0);
  return Math.max(readsLess(context), travel.isStep ? 0 : Math.min(back, byStandstill));
}

/** By how much the clamp of some side reads too little for sure, natural logarithm; 0: of none. */
function readsLess({ state, residual }: FindingContext): number {
  const running = state.room.sides
    .map((side) => residual(side, 'runningAmps'))
    .filter((each) => each !== null);
  return Math.max(0, ...running.map(({ rise, deviation }) => -rise - deviation));
}

/** Keeps by how much the turns of the latest strokes seem fewer for what was drawn at standstill. */
function noteStandstill(context: FindingContext): void {
  const { room, travel } = context.state;
  const now = room.sides.map((side) => fewerByStandstill(context, side)).filter((each) => each !== null);
  if (now.length > 0) travel.fell.push(Math.max(...now));
  if (travel.fell.length > SUPPLIES) travel.fell.shift();
}

/** How many fewer turns a side seems to have made for what it drew less at standstill, natural logarithm; null: not read. */
function fewerByStandstill({ analysis, residual }: FindingContext, side: string): number | null {
  const judged = residual(side, 'endStopAmps') ?? residual(side, 'inrushAmps');
  if (judged === null) return null;
  const { runningAmps } = analysis.sides[side];
  const standstill = standstillAmps(analysis.sides[side]);
  // Turns go by what it draws more than running, of which the same amperes are the larger part.
  return (-judged.fromReference * standstill) / Math.max(standstill - runningAmps, runningAmps);
}

/** Turns that are fewer by so many deviations came to be so in one step, where the step is so much of it. */
const STEP_SIGMAS = 2;
const STEP_PART = 0.6;

/**
 * Sees whether the turns have just become fewer while the current at standstill stayed what it was, or no longer are. Only from
 * going out to coming in: nobody drives with a room out, so that both are made at one place and mostly on one supply. Elsewhere
 * a stronger supply may hide what a contact took.
 */
function noteStep({ state, event, direction }: FindingContext, fewer: number, deviation: number): void {
  const { travel } = state;
  const fell = travel.fell.at(-1) ?? 0;
  const before = travel.counted;
  travel.counted = { fewer, fell, direction, atMs: event.atMs };
  if (fewer <= STEP_SIGMAS * deviation) {
    travel.isStep = false;
    return;
  }
  const isSamePlace = before?.direction === 'extend' && direction === 'retract';
  if (!isSamePlace || event.atMs - before.atMs > SAME_SUPPLY_HOURS * 3_600_000) return;
  const mostly = STEP_PART * fewer;
  if (fewer - before.fewer > mostly && fell - before.fell < fewer - mostly) travel.isStep = true;
}
