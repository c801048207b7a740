import type uPlot from 'uplot';
import type { StrokesPreview } from '../../api/types.ts';
import { words } from '../../words.ts';
import { numberAxis, uprightAxis } from '../drawn/axes.ts';
import { fontOf, inside, pixels } from '../drawn/pens.ts';
import { tickNumber } from '../drawn/tickNumber.ts';
import type { PlotLibrary, PlotSpec } from '../plot/drawPlot.ts';
import { type ChartTheme, lookOf } from '../plot/theme.ts';
import { upperThird } from './timeSpec.ts';

/** A whole recording with the strokes that it is cut into, shaded and numbered. */
export function recordingSpec(
  { sides, supply, strokes }: Pick<StrokesPreview, 'sides' | 'supply' | 'strokes'>,
  roomSides: readonly string[],
  theme: ChartTheme,
  library: PlotLibrary,
): PlotSpec {
  const lines = supply === null ? sides : [...sides, supply];
  const lookFor = (name: string, i: number) =>
    lookOf(theme, roomSides.includes(name) ? roomSides.indexOf(name) : i);
  return {
    data: library.join(lines.map(({ seconds, values }): uPlot.AlignedData => [seconds, values])),
    options: {
      scales: { x: { time: false }, volts: { range: upperThird } },
      axes: [
        numberAxis(theme, (seconds, step) => `${tickNumber(seconds, step)} ${words.units.seconds}`),
        uprightAxis(theme, 'A'),
        ...(supply === null
          ? []
          : [{ ...uprightAxis(theme, 'V'), scale: 'volts', side: 1 as const, grid: { show: false } }]),
      ],
      cursor: { y: false, points: { show: false }, drag: { x: true, y: false } },
      series: [
        {},
        ...sides.map(({ name }, i) => {
          const { colour, dash } = lookFor(name, i);
          return { stroke: colour, width: 1.5, dash: [...dash], points: { show: false } };
        }),
        ...(supply === null
          ? []
          : [{ scale: 'volts', stroke: theme.supply, width: 1.5, dash: [1, 3], points: { show: false } }]),
      ],
      hooks: { drawClear: [(u) => shadeStrokes(u, strokes, theme)] },
    },
  };
}

function shadeStrokes(u: uPlot, strokes: StrokesPreview['strokes'], theme: ChartTheme): void {
  const { top, height } = u.bbox;
  inside(u, (pen) => {
    pen.font = fontOf(11);
    pen.textBaseline = 'top';
    pen.textAlign = 'center';
    pen.strokeStyle = theme.soft;
    pen.lineWidth = pixels(1);
    for (const [i, { fromS, toS }] of strokes.entries()) {
      const x = u.valToPos(fromS, 'x', true);
      const wide = u.valToPos(toS, 'x', true) - x;
      pen.fillStyle = theme.band;
      pen.fillRect(x, top, wide, height);
      pen.strokeRect(x, top, wide, height);
      pen.fillStyle = theme.ink;
      pen.fillText(String(i + 1), x + wide / 2, top + pixels(3));
    }
  });
}
