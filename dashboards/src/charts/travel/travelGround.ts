import type uPlot from 'uplot';
import type { NormalSide } from '../../api/types.ts';
import { fontOf, inside, pixels, writeOver } from '../drawn/pens.ts';
import type { ChartTheme, SideLook } from '../plot/theme.ts';

/** What lies under the lines of a travel picture. */

/** The normal of one side: a band in its colour with edges in its dash, so that two bands can lie over each other. */
export function drawNormal(u: uPlot, { lower, upper }: NormalSide, { colour, dash }: SideLook): void {
  const at = (values: NormalSide['upper']) =>
    values.flatMap((amps, bin) =>
      amps === null
        ? []
        : [[u.valToPos((bin + 0.5) / values.length, 'x', true), u.valToPos(amps, 'y', true)] as const],
    );
  const [low, high] = [at(lower), at(upper)];
  if (low.length === 0) return;
  inside(u, (pen) => {
    pen.fillStyle = colour;
    pen.strokeStyle = colour;
    pen.lineWidth = pixels(0.75);
    pen.globalAlpha = 0.14;
    path(pen, [...high, ...[...low].reverse()]);
    pen.fill();
    pen.globalAlpha = 0.5;
    pen.setLineDash(dash.map(pixels));
    for (const edge of [low, high]) {
      path(pen, edge);
      pen.stroke();
    }
  });
}

function path(pen: CanvasRenderingContext2D, points: readonly (readonly [number, number])[]): void {
  pen.beginPath();
  for (const [i, [x, y]] of points.entries()) {
    if (i === 0) pen.moveTo(x, y);
    else pen.lineTo(x, y);
  }
}

/** Nearer to each other than this their numbers would run together. */
const NUMBERS_APART_PX = 22;

/** Where the gear has made another whole turn, with every turn's number where there is room. */
export function drawTurns(u: uPlot, turns: readonly number[], theme: ChartTheme): void {
  let numberedX = Number.NEGATIVE_INFINITY;
  inside(u, (pen) => {
    pen.strokeStyle = theme.work;
    pen.fillStyle = theme.work;
    pen.lineWidth = pixels(1);
    pen.font = fontOf(10);
    pen.textAlign = 'center';
    pen.textBaseline = 'bottom';
    const bottom = u.bbox.top + u.bbox.height;
    for (const [i, place] of turns.entries()) {
      const x = u.valToPos(place, 'x', true);
      pen.globalAlpha = 0.45;
      pen.setLineDash([pixels(1), pixels(5)]);
      pen.beginPath();
      pen.moveTo(x, u.bbox.top);
      pen.lineTo(x, bottom);
      pen.stroke();
      pen.globalAlpha = 1;
      if (x - numberedX < pixels(NUMBERS_APART_PX)) continue;
      numberedX = x;
      writeOver(pen, String(i + 1), x, bottom - pixels(2), theme.surface);
    }
  });
}
