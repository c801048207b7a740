import type uPlot from 'uplot';
import type { RunningLine } from '../../live/runningStroke.ts';
import { words } from '../../words.ts';
import { numberAxis, uprightAxis } from '../drawn/axes.ts';
import { tickNumber } from '../drawn/tickNumber.ts';
import type { PlotLibrary, PlotSpec } from '../plot/drawPlot.ts';
import { type ChartTheme, lookOf } from '../plot/theme.ts';
import { upperThird } from './timeSpec.ts';

/** A picture that does not jump with every sample: it shows so long from the start, and doubles when that is full. */
const FIRST_S = 15;

const roomToGrow: uPlot.Range.Function = (_, __, max) => {
  let last = FIRST_S;
  while (last < max) last *= 2;
  return [0, last];
};

/** The lines in the order in which the picture has them. */
export function liveData(lines: readonly RunningLine[], library: PlotLibrary): uPlot.AlignedData {
  return library.join(lines.map(({ seconds, values }): uPlot.AlignedData => [[...seconds], [...values]]));
}

/** A stroke under way: which lines it has, not what is in them. */
export function liveSpec(
  lines: readonly RunningLine[],
  roomSides: readonly string[],
  theme: ChartTheme,
  library: PlotLibrary,
): PlotSpec {
  return {
    data: liveData(lines, library),
    options: {
      scales: { x: { time: false, range: roomToGrow }, volts: { range: upperThird } },
      axes: [
        numberAxis(theme, (seconds, step) => `${tickNumber(seconds, step)} ${words.units.seconds}`),
        uprightAxis(theme, 'A'),
        ...(lines.some(({ side }) => side === null)
          ? [{ ...uprightAxis(theme, 'V'), scale: 'volts', side: 1 as const, grid: { show: false } }]
          : []),
      ],
      cursor: { y: false, drag: { x: false, y: false } },
      series: [
        {},
        ...lines.map(({ side }): uPlot.Series => {
          if (side === null)
            return {
              scale: 'volts',
              stroke: theme.supply,
              width: 1.5,
              dash: [1, 3],
              points: { show: false },
            };
          const { colour, dash } = lookOf(theme, Math.max(0, roomSides.indexOf(side)));
          return { stroke: colour, width: 1.75, dash: [...dash], points: { show: false } };
        }),
      ],
    },
  };
}
