import type uPlot from 'uplot';
import { words } from '../../words.ts';
import { fontOf, inside, pixels } from '../drawn/pens.ts';
import type { ChartTheme } from '../plot/theme.ts';
import type { ForecastLine } from './forecastLine.ts';

/** The service line, the way to it, and between when and when it is reached; an arrow where that is out of sight. */
export function drawForecast(u: uPlot, line: ForecastLine, theme: ChartTheme): void {
  const x = (seconds: number) => u.valToPos(seconds, 'x', true);
  const y = (value: number) => u.valToPos(value, 'y', true);
  const right = u.bbox.left + u.bbox.width;
  const top = y(line.serviceLine);
  inside(u, (pen) => {
    pen.strokeStyle = theme.ink;
    pen.fillStyle = theme.ink;
    pen.lineWidth = pixels(1);
    pen.setLineDash([pixels(8), pixels(4)]);
    segment(pen, u.bbox.left, top, right, top);
    pen.font = fontOf(11);
    pen.textBaseline = 'bottom';
    pen.textAlign = 'left';
    pen.fillText(words.trend.serviceLine, u.bbox.left + pixels(4), top - pixels(2));
    pen.lineWidth = pixels(1.5);
    pen.setLineDash([pixels(2), pixels(3)]);
    segment(pen, x(line.fromS), y(line.fromValue), x(line.reachedS), top);
    pen.setLineDash([]);
    pen.lineWidth = pixels(3);
    const [from, to] = [x(line.earliestS), line.latestS === null ? right : x(line.latestS)];
    segment(pen, from, top, Math.min(to, right), top);
    pen.lineWidth = pixels(1.5);
    segment(pen, from, top - pixels(5), from, top + pixels(5));
    if (to < right) segment(pen, to, top - pixels(5), to, top + pixels(5));
    else arrow(pen, right - pixels(2), top);
  });
}

function segment(pen: CanvasRenderingContext2D, x1: number, y1: number, x2: number, y2: number): void {
  pen.beginPath();
  pen.moveTo(x1, y1);
  pen.lineTo(x2, y2);
  pen.stroke();
}

function arrow(pen: CanvasRenderingContext2D, x: number, y: number): void {
  pen.beginPath();
  pen.moveTo(x - pixels(7), y - pixels(5));
  pen.lineTo(x, y);
  pen.lineTo(x - pixels(7), y + pixels(5));
  pen.stroke();
}
