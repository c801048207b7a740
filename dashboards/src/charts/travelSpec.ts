import type uPlot from 'uplot';
import type { DoneAnalysis } from '../api/types.ts';
import { percent } from '../format.ts';
import { numberAxis, uprightAxis } from './axes.ts';
import type { PlotSpec } from './Plot.tsx';
import { fontOf, inside, pixels, triangle } from './pens.ts';
import { type ChartTheme, lookOf } from './theme.ts';

/** One spike or dip with the number that it has in the list below the picture. */
export interface NumberedMark {
  readonly number: number;
  readonly side: string;
  readonly kind: 'spike' | 'dip';
  readonly position: number;
  readonly amps: number;
  readonly widthS: number;
}

/** All marks of a stroke, numbered along the travel within each side. */
export function numberMarks(analysis: DoneAnalysis, sides: readonly string[]): NumberedMark[] {
  const found = sides.flatMap((side) => {
    const measures = analysis.sides[side];
    if (measures === undefined) return [];
    const spikes = measures.spikes.map((spike) => ({ ...spike, side, kind: 'spike' as const }));
    const dips = measures.dips.map((dip) => ({ ...dip, side, kind: 'dip' as const }));
    return [...spikes, ...dips].sort((a, b) => a.position - b.position);
  });
  return found.map((mark, i) => ({ ...mark, number: i + 1 }));
}

/** Draws a mark with its number at a place of the picture: above the line for a spike, below for a dip. */
export function drawMark(
  pen: CanvasRenderingContext2D,
  x: number,
  y: number,
  mark: NumberedMark,
  colour: string,
): void {
  const above = mark.kind === 'spike';
  const away = pixels(above ? -9 : 9);
  triangle(pen, x, y + away, pixels(5), !above);
  pen.fillStyle = colour;
  pen.fill();
  pen.font = fontOf(11);
  pen.textAlign = 'center';
  pen.textBaseline = above ? 'bottom' : 'top';
  pen.fillText(String(mark.number), x, y + away * 1.75);
}

/** Room above and below, so that marks and their numbers are not cut off. */
export const markedRange: uPlot.Range.Function = (_, min, max) => {
  const room = Math.max(0.5, (max - Math.min(0, min)) * 0.16);
  return [Math.min(0, min), max + room];
};

/** Median current of every side by travel position. */
export function travelSpec(
  analysis: DoneAnalysis,
  sides: readonly string[],
  marks: readonly NumberedMark[],
  theme: ChartTheme,
): PlotSpec {
  const shown = sides.filter((side) => analysis.sides[side] !== undefined);
  const bins = Math.max(1, ...shown.map((side) => analysis.sides[side].profile.length));
  const places = Array.from({ length: bins }, (_, i) => (i + 0.5) / bins);
  const top = marks.reduce((high, mark) => Math.max(high, mark.amps), 0);
  return {
    data: [places, ...shown.map((side) => [...analysis.sides[side].profile])],
    options: {
      scales: {
        x: {
          time: false,
          range: (_, min, max) => (min <= places[0] && max >= places[bins - 1] ? [0, 1] : [min, max]),
        },
        y: { range: (u, min, max) => markedRange(u, min, Math.max(max, top), 'y') },
      },
      axes: [numberAxis(theme, percent), uprightAxis(theme, 'A')],
      cursor: { y: false, drag: { x: true, y: false } },
      series: [
        {},
        ...shown.map((side) => {
          const look = lookOf(theme, sides.indexOf(side));
          return { stroke: look.colour, width: 2, dash: [...look.dash], points: { show: false } };
        }),
      ],
      hooks: {
        draw: [
          (u) =>
            inside(u, (pen) => {
              for (const mark of marks) {
                const x = u.valToPos(mark.position, 'x', true);
                const y = u.valToPos(mark.amps, 'y', true);
                drawMark(pen, x, y, mark, lookOf(theme, sides.indexOf(mark.side)).colour);
              }
            }),
        ],
      },
    },
  };
}
