import type uPlot from 'uplot';
import type { Trend } from '../../api/types.ts';
import { words } from '../../words.ts';
import { readersDate, timeAxis, uprightAxis } from '../drawn/axes.ts';
import { fontOf, inside, pixels, writeOver } from '../drawn/pens.ts';
import type { PlotLibrary, PlotSpec } from '../plot/drawPlot.ts';
import { type ChartTheme, lookOf } from '../plot/theme.ts';
import { forecastLine } from './forecastLine.ts';
import { drawForecast } from './trendForecast.ts';
import type { TrendFrame } from './trendFrame.ts';
import { drawPoints } from './trendPoints.ts';
import { shownValue, type TrendScale } from './trendValues.ts';

/** The normal band, under everything else and over the whole width: it holds for what comes next, too. */
function drawBand(u: uPlot, limits: Trend['limits'], theme: ChartTheme): void {
  if (limits === null) return;
  const { left, width } = u.bbox;
  const at = (value: number) => u.valToPos(value, 'y', true);
  inside(u, (pen) => {
    pen.fillStyle = theme.band;
    pen.fillRect(left, at(limits.upper), width, at(limits.lower) - at(limits.upper));
    pen.strokeStyle = theme.soft;
    pen.lineWidth = pixels(1);
    pen.setLineDash([pixels(2), pixels(3)]);
    pen.beginPath();
    pen.moveTo(left, at(limits.centre));
    pen.lineTo(left + width, at(limits.centre));
    pen.stroke();
  });
}

function drawServices(u: uPlot, trend: Trend, theme: ChartTheme): void {
  let lastLabelX = Number.NEGATIVE_INFINITY;
  const inOrder = [...trend.services].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
  inside(u, (pen) => {
    pen.strokeStyle = theme.work;
    pen.fillStyle = theme.work;
    pen.lineWidth = pixels(1.5);
    pen.font = fontOf(11);
    for (const service of inOrder) {
      const x = u.valToPos(Date.parse(service.at) / 1000, 'x', true);
      pen.setLineDash([pixels(4), pixels(3)]);
      pen.beginPath();
      pen.moveTo(x, u.bbox.top);
      pen.lineTo(x, u.bbox.top + u.bbox.height);
      pen.stroke();
      // Two works on one day would write over each other: the first is named here, all in the list below.
      if (x - lastLabelX < pixels(14)) continue;
      lastLabelX = x;
      const nearEdge = x + pixels(16) > u.bbox.left + u.bbox.width;
      pen.save();
      pen.translate(x + pixels(nearEdge ? -5 : 12), u.bbox.top + pixels(6));
      pen.rotate(-Math.PI / 2);
      pen.textAlign = 'right';
      writeOver(pen, words.services.kinds[service.kind], 0, 0, theme.surface);
      pen.restore();
    }
  });
}

interface TrendPicture {
  readonly trend: Trend;
  readonly scale: TrendScale;
  readonly sideIndex: number;
  readonly unit: string;
  /** The same for all sides, so that they can be compared by eye. */
  readonly frame: TrendFrame;
}

/** The picture of one side's trend: normal band, course, points, and work done. */
export function trendSpec(
  { trend, scale, sideIndex, unit, frame }: TrendPicture,
  theme: ChartTheme,
  library: PlotLibrary,
): PlotSpec {
  const { colour } = lookOf(theme, sideIndex);
  const times = trend.points.map((p) => Date.parse(p.at) / 1000);
  const [first, end] = frame.times;
  const [low, high] = frame.values;
  const forecast = scale === 'adjusted' ? forecastLine(trend) : null;
  const spare = Math.max(3600, (end - first) * 0.03);
  const room = Math.max((high - low) * 0.12, Math.abs(high) * 0.02, 1e-6);
  const expected = trend.points.map((p) => (scale === 'measured' ? p.expected : null));
  return {
    data: [times, trend.points.map((p) => shownValue(p, scale)), expected],
    options: {
      // Half of the last date's label stands beyond the picture's own edge.
      padding: [null, 32, null, null],
      scales: {
        x: {
          time: true,
          // Asked of its own strokes at first, from the first to the last: that is the whole.
          range: (_, min, max) =>
            min === times[0] && max === times[times.length - 1] ? [first - spare, end + spare] : [min, max],
        },
        y: { range: () => [low - room, high + room] },
      },
      tzDate: readersDate(library),
      axes: [timeAxis(theme), uprightAxis(theme, unit)],
      cursor: { y: false, points: { size: 9 }, drag: { x: true, y: false } },
      series: [
        {},
        { stroke: colour, width: 1, points: { show: false } },
        { stroke: theme.soft, width: 1, dash: [2, 3], points: { show: false } },
      ],
      hooks: {
        drawClear: [(u) => scale === 'adjusted' && drawBand(u, trend.limits, theme)],
        draw: [
          (u) => {
            drawServices(u, trend, theme);
            if (forecast !== null) drawForecast(u, forecast, theme);
            drawPoints(u, trend, scale, theme, colour);
          },
        ],
      },
    },
  };
}
