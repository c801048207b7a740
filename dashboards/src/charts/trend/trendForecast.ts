import type uPlot from 'uplot';
import type { Trend } from '../../api/types.ts';
import { words } from '../../words.ts';
import { fontOf, inside, pixels } from '../drawn/pens.ts';
import type { ChartTheme } from '../plot/theme.ts';

/** A forecast in strokes, put on the axis of time by the pace of the latest strokes. Seconds since 1970. */
export interface ForecastLine {
  readonly fromS: number;
  readonly fromValue: number;
  readonly serviceLine: number;
  /** When the service line is reached, with the interval's ends; the later may never come. */
  readonly reachedS: number;
  readonly earliestS: number;
  readonly latestS: number | null;
}

/** Strokes whose pace is taken for the pace to come. */
const PACE_STROKES = 30;

/** Null where nothing is forecast, or no pace is known. */
export function forecastLine({ forecast, points }: Trend): ForecastLine | null {
  const times = points.slice(-PACE_STROKES).map(({ at }) => Date.parse(at) / 1000);
  if (forecast === null || times.length < 2) return null;
  const fromS = times[times.length - 1];
  const paceS = (fromS - times[0]) / (times.length - 1);
  const after = (strokes: number) => fromS + strokes * paceS;
  const grown = (1 + forecast.percentPerStroke / 100) ** forecast.strokes;
  return {
    fromS,
    fromValue: forecast.serviceLine / grown,
    serviceLine: forecast.serviceLine,
    reachedS: after(forecast.strokes),
    earliestS: after(forecast.lower),
    latestS: forecast.upper === null ? null : after(forecast.upper),
  };
}

/** The future may take so much of the picture, as a part of the past. */
const MOST_AHEAD = 0.6;

/** Until when a picture shows what is to come: all of it, unless that would press the past together. */
export function endOfForecast({ fromS, reachedS, latestS }: ForecastLine, firstS: number): number {
  return Math.min(Math.max(reachedS, latestS ?? 0), fromS + MOST_AHEAD * Math.max(1, fromS - firstS));
}

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
