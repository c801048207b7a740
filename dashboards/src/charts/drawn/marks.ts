import type uPlot from 'uplot';
import type { DoneAnalysis } from '../../api/types.ts';
import { fontOf, pixels, triangle, writeOver } from './pens.ts';

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

/** Draws a mark with its number at a place of the picture, pixels: above the line for a spike, below for a dip. */
export function drawMark(
  pen: CanvasRenderingContext2D,
  { x, y }: { readonly x: number; readonly y: number },
  mark: NumberedMark,
  { colour, ground }: { readonly colour: string; readonly ground: string },
): void {
  const above = mark.kind === 'spike';
  const away = pixels(above ? -9 : 9);
  triangle(pen, x, y + away, pixels(5), !above);
  pen.fillStyle = colour;
  pen.fill();
  pen.font = fontOf(11);
  pen.textAlign = 'center';
  pen.textBaseline = above ? 'bottom' : 'top';
  writeOver(pen, String(mark.number), x, y + away * 1.75, ground);
}

/** Room above and below, so that marks and their numbers are not cut off. */
export const markedRange: uPlot.Range.Function = (_, min, max) => {
  const room = Math.max(0.5, (max - Math.min(0, min)) * 0.16);
  return [Math.min(0, min), max + room];
};
