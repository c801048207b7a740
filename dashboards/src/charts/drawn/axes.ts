import type uPlot from 'uplot';
import { finePercent, plainNumber } from '../../format.ts';
import { forEachReader, theReader } from '../../reader.ts';
import type { PlotLibrary } from '../plot/drawPlot.ts';
import type { ChartTheme } from '../plot/theme.ts';
import { tickNumber } from './tickNumber.ts';

const FONT = '12px system-ui, sans-serif';
const DAY_S = 86_400;

let clock: Intl.DateTimeFormat;
let day: Intl.DateTimeFormat;
let month: Intl.DateTimeFormat;
forEachReader(({ locale, timeZone }) => {
  clock = new Intl.DateTimeFormat(locale, { hour: '2-digit', minute: '2-digit', timeZone });
  day = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', timeZone });
  month = new Intl.DateTimeFormat(locale, { month: 'short', year: 'numeric', timeZone });
});

/** Labels in the reader's own way of writing dates, as fine as the steps between them. */
function timeLabels(_: uPlot, splits: number[], _axis: number, _space: number, stepS: number): string[] {
  const format = stepS < DAY_S ? clock : stepS < 30 * DAY_S ? day : month;
  return splits.map((at) => format.format(at * 1000));
}

/** Where days and months begin: in the reader's zone, not the device's. Seconds since 1970. */
export function readersDate(library: PlotLibrary): (atS: number) => Date {
  const { timeZone } = theReader();
  return (atS) => {
    const at = new Date(atS * 1000);
    return timeZone === undefined ? at : library.tzDate(at, timeZone);
  };
}

/** A year at 10,000 strokes or a minute at two: only the steps that `timeLabels` can tell apart. */
const TIME_STEPS_S = [
  ...[60, 300, 900, 3600, 10_800, 21_600, 43_200],
  // The library counts steps of 30 days and more in months, those of 365 and more in years.
  ...[1, 2, 3, 7, 14, 30, 60, 90, 120, 180, 240, 365, 730, 1825].map((days) => days * DAY_S),
];

function look(theme: ChartTheme): uPlot.Axis {
  return {
    stroke: theme.soft,
    font: FONT,
    grid: { stroke: theme.grid, width: 1 },
    ticks: { stroke: theme.grid, width: 1, size: 5 },
  };
}

/** As wide as a month of the longest name, and a gap: no date runs into the next, in any language. */
const spaceForDates: uPlot.Axis.Space = ({ ctx }) => {
  ctx.save();
  ctx.font = FONT;
  const { width } = ctx.measureText(month.format(Date.UTC(2026, 8, 15)));
  ctx.restore();
  return width + 14;
};

export function timeAxis(theme: ChartTheme): uPlot.Axis {
  return { ...look(theme), size: 32, space: spaceForDates, incrs: TIME_STEPS_S, values: timeLabels };
}

type Label = (value: number, step: number) => string;

export function numberAxis(theme: ChartTheme, label: Label = plainNumber): uPlot.Axis {
  return {
    ...look(theme),
    size: 32,
    values: (_, splits, _axis, _space, step) => splits.map((value) => label(value, step)),
  };
}

/** On a phone two axes must not take half of the picture. */
const NARROW_PX = 480;
const isNarrow = ({ width }: uPlot): boolean => width < NARROW_PX;

/** An upright axis as wide as its widest label needs; the unit stands at every label, in a narrow picture at the top one. */
export function uprightAxis(theme: ChartTheme, unit: string): uPlot.Axis {
  const label: Label = unit === '1' ? finePercent : tickNumber;
  const hasUnit = (u: uPlot, i: number, splits: readonly number[]) =>
    unit !== '1' && (!isNarrow(u) || i === splits.length - 1);
  return {
    ...look(theme),
    values: (u, splits, _axis, _space, step) =>
      splits.map((value, i) => label(value, step) + (hasUnit(u, i, splits) ? ` ${unit}` : '')),
    size: (u, labels) => {
      const longest = Math.max(2, ...(labels ?? []).map((text) => (text ?? '').length));
      return (isNarrow(u) ? 11 : 18) + 7 * longest;
    },
    space: 28,
  };
}
