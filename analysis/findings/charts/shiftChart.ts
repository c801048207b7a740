import { median } from '../../statistics/median.ts';
import { DIRECTIONS, type Direction, otherWay } from '../../trace.ts';
import { LEAST_RUN } from './chartDesign.ts';
import { type ChartDesign, chartStep } from './chartStep.ts';
import { keepLatest } from './keepLatest.ts';
import { beginShiftCharts, type ShiftChart, type ShiftCharts } from './shiftMemory.ts';

/** It is over once so many strokes of each direction are back. */
const BACK_EACH_WAY = 2;
/** The way back is as ever where it moved by less than this part of the way's own. A guess, no source. */
const BACK_PART = 0.3;

/** What the charts of all strokes and of one direction's are designed by. */
export interface ShiftDesign {
  readonly all: ChartDesign;
  readonly ofWay: ChartDesign;
}

/** One more stroke into the charts of all and of its own direction, which are half as many. */
export function takeShift(
  charts: ShiftCharts,
  direction: Direction,
  move: number,
  { all, ofWay }: ShiftDesign,
): void {
  take(charts.all, move, all);
  take(charts.ways[direction], move, ofWay);
}

function take(chart: ShiftChart, move: number, { k, h }: ChartDesign): void {
  [chart.up, chart.upRun] = chartStep(chart.up, chart.upRun, Math.min(move, k + h / 2), { k, h });
  [chart.down, chart.downRun] = chartStep(chart.down, chart.downRun, Math.min(-move, k + h / 2), { k, h });
  keepLatest(chart.shifts, move);
}

/** Median move of the latest strokes; 0 before there were any. */
export function latestShift({ shifts }: ShiftChart): number {
  return shifts.length === 0 ? 0 : median(shifts.slice(-LEAST_RUN));
}

/** Whether strokes of this direction have moved and those of the other are as ever. */
export function isOneWay({ ways }: ShiftCharts, direction: Direction): boolean {
  const back = Math.abs(latestShift(ways[otherWay(direction)]));
  return back < BACK_PART * Math.abs(latestShift(ways[direction]));
}

/** For how many strokes in a row the chart tells of a move this way, which the latest confirms; 0: it tells of none. */
export function tellsFor(
  { up, upRun, down, downRun }: ShiftChart,
  move: number,
  { k, h }: ChartDesign,
): number {
  const [sum, run] = move > 0 ? [up, upRun] : [down, downRun];
  return sum > h && Math.abs(move) > k && run >= LEAST_RUN ? run : 0;
}

/** Whether the latest strokes of each direction are back within so much of their normal; `sign`: of what was said. */
export function isBackEachWay({ all, ways }: ShiftCharts, sign: 1 | -1, within: number): boolean {
  const latest = DIRECTIONS.map((way) => {
    const shifts = ways[way].shifts.slice(-BACK_EACH_WAY);
    return shifts.length === 0 ? 0 : sign * median(shifts);
  });
  return all.shifts.length >= DIRECTIONS.length * BACK_EACH_WAY && Math.max(...latest) < within;
}

/** Forgets the sums, as after a service or when a warning is cleared. */
export function restShifts(charts: ShiftCharts): void {
  Object.assign(charts, beginShiftCharts());
}
