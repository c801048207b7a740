import type uPlot from 'uplot';
import type { Trend, TrendPoint } from '../../api/types.ts';
import { dot, inside, pixels, triangle } from '../drawn/pens.ts';
import type { ChartTheme } from '../plot/theme.ts';
import { shownValue, type TrendScale } from './trendValues.ts';

interface PlacedPoint {
  readonly point: TrendPoint;
  readonly x: number;
  readonly value: number;
}

/** The points of a trend: a dot, hollow while learning, and a triangle beyond the limits. */
export function drawPoints(
  u: uPlot,
  trend: Trend,
  scale: TrendScale,
  theme: ChartTheme,
  colour: string,
): void {
  const { left, width } = u.bbox;
  const visible = trend.points
    .map((point) => ({
      point,
      x: u.valToPos(Date.parse(point.at) / 1000, 'x', true),
      value: shownValue(point, scale),
    }))
    .filter(({ x }) => x >= left - pixels(8) && x <= left + width + pixels(8));
  const crowded = visible.length > width / pixels(4);
  inside(u, (pen) => {
    for (const { point, x, value } of crowded ? extremes(visible) : visible) {
      const y = u.valToPos(value, 'y', true);
      if (point.beyond) {
        triangle(pen, x, y, pixels(6), value >= (trend.limits?.centre ?? point.expected ?? value));
        pen.fillStyle = theme.beyond;
        pen.fill();
      } else {
        dot(pen, x, y, pixels(crowded ? 1.5 : 3));
        pen.fillStyle = point.expected === null ? theme.surface : colour;
        pen.strokeStyle = colour;
        pen.lineWidth = pixels(1.5);
        pen.fill();
        pen.stroke();
      }
    }
  });
}

/** Of each column of pixels the lowest and the highest: what lies between them is hidden by them anyhow. */
function extremes(points: readonly PlacedPoint[]): PlacedPoint[] {
  const columns = new Map<number, { low: PlacedPoint; high: PlacedPoint }>();
  for (const point of points) {
    const column = Math.round(point.x);
    const held = columns.get(column);
    if (held === undefined) columns.set(column, { low: point, high: point });
    else if (point.value < held.low.value) held.low = point;
    else if (point.value > held.high.value) held.high = point;
  }
  return [...columns.values()].flatMap(({ low, high }) => (low === high ? [low] : [low, high]));
}
