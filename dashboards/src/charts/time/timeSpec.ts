import type uPlot from 'uplot';
import type { DoneAnalysis } from '../../api/types.ts';
import { markMoment, type TraceLine } from '../../stroke/traceLines.ts';
import { words } from '../../words.ts';
import { numberAxis, uprightAxis } from '../drawn/axes.ts';
import { drawLane, LANE_PX, type Stretch } from '../drawn/lanes.ts';
import { drawMark, markedRange, type NumberedMark } from '../drawn/marks.ts';
import { inside } from '../drawn/pens.ts';
import { tickNumber } from '../drawn/tickNumber.ts';
import type { PlotLibrary, PlotSpec } from '../plot/drawPlot.ts';
import { type ChartTheme, lookOf } from '../plot/theme.ts';

interface TimePicture {
  readonly sides: readonly string[];
  readonly lines: readonly TraceLine[];
  readonly supply: TraceLine | null;
  readonly analysis: DoneAnalysis | null;
  readonly marks: readonly NumberedMark[];
}

/** One side's phases in order; pauses lie over the running phase. */
function stretches(analysis: DoneAnalysis, side: string): Stretch[] {
  const { startS, inrushEndS, endStopStartS, endS, pauses } = analysis.sides[side].phases;
  return [
    { from: startS, to: inrushEndS, phase: 'inrush' },
    { from: inrushEndS, to: endStopStartS ?? endS, phase: 'running' },
    ...(endStopStartS === null ? [] : [{ from: endStopStartS, to: endS, phase: 'endStop' as const }]),
    ...pauses.map(({ fromS, toS }) => ({ from: fromS, to: toS, phase: 'pause' as const })),
  ];
}

/** Keeps the supply in the upper third, clear of the running currents. */
export const upperThird: uPlot.Range.Function = (_, min, max) => {
  const span = Math.max(1, max - min);
  return [max - span * 3.2, max + span * 0.1];
};

/** What the sensors recorded, over time, with each side's phases above and its marks on its line. */
export function timeSpec(picture: TimePicture, theme: ChartTheme, library: PlotLibrary): PlotSpec {
  const { sides, lines, supply, analysis, marks } = picture;
  const drawn = supply === null ? lines : [...lines, supply];
  const tables = drawn.map((line): uPlot.AlignedData => [[...line.seconds], [...line.values]]);
  const lanes = analysis === null ? [] : sides.filter((side) => analysis.sides[side] !== undefined);
  const lookFor = (side: string) => lookOf(theme, Math.max(0, sides.indexOf(side)));
  const moments = marks.flatMap((mark) => {
    const line = lines.find((l) => l.name === mark.side);
    if (analysis === null || line === undefined) return [];
    const moment = markMoment(mark, analysis.sides[mark.side], line, analysis.direction);
    return moment === null ? [] : [{ mark, moment }];
  });
  return {
    data: library.join(tables),
    options: {
      padding: [8 + LANE_PX * lanes.length, null, null, null],
      scales: { x: { time: false }, y: { range: markedRange }, volts: { range: upperThird } },
      axes: [
        numberAxis(theme, (seconds, step) => `${tickNumber(seconds, step)} ${words.units.seconds}`),
        uprightAxis(theme, 'A'),
        ...(supply === null
          ? []
          : [{ ...uprightAxis(theme, 'V'), scale: 'volts', side: 1 as const, grid: { show: false } }]),
      ],
      cursor: { y: false, drag: { x: true, y: false } },
      series: [
        {},
        ...lines.map((line) => {
          const look = lookFor(line.name);
          return { stroke: look.colour, width: 1.5, dash: [...look.dash], points: { show: false } };
        }),
        ...(supply === null
          ? []
          : [{ scale: 'volts', stroke: theme.supply, width: 1.5, dash: [1, 3], points: { show: false } }]),
      ],
      hooks: {
        draw: [
          (u) => {
            if (analysis === null) return;
            for (const [lane, side] of [...lanes].reverse().entries()) {
              drawLane(u, lane, stretches(analysis, side), lookFor(side).colour, theme);
            }
            inside(u, (pen) => {
              for (const { mark, moment } of moments) {
                const at = {
                  x: u.valToPos(moment.seconds, 'x', true),
                  y: u.valToPos(moment.amps, 'y', true),
                };
                drawMark(pen, at, mark, { colour: lookFor(mark.side).colour, ground: theme.surface });
              }
            });
          },
        ],
      },
    },
  };
}
