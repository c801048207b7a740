import { useCallback, useEffect, useMemo } from 'preact/hooks';
import type { MeasureTitle, Room, Trend } from '../../api/types.ts';
import { Chart } from '../../charts/plot/Chart.tsx';
import type { PlotLibrary } from '../../charts/plot/drawPlot.ts';
import { Plot } from '../../charts/plot/Plot.tsx';
import type { ChartTheme } from '../../charts/plot/theme.ts';
import type { View } from '../../charts/plot/view.ts';
import { frameOfTrend, type TrendFrame } from '../../charts/trend/trendFrame.ts';
import { trendSpec } from '../../charts/trend/trendSpec.ts';
import { shownValue, type TrendScale } from '../../charts/trend/trendValues.ts';
import { quantity, whenText } from '../../format.ts';
import { navigate } from '../../router.ts';
import { sideTitle } from '../../sideName.ts';
import { words } from '../../words.ts';
import { TrendKeys } from './TrendKeys.tsx';
import { TrendTable } from './TrendTable.tsx';
import { trendSummary } from './trendSummary.ts';

const HEIGHT_PX = 230;

/** Of a trend without a stroke. */
const NOTHING: TrendFrame = { values: [0, 1], times: [0, 1] };

/** What is drawn of a side, and on which scale. */
export interface DrawnTrend {
  readonly room: Room;
  readonly measure: MeasureTitle;
  /** null: the measure is of the whole stroke. */
  readonly side: string | null;
  readonly scale: TrendScale;
  /** Of all sides that are shown, so that their pictures can be compared by eye; null until one is known. */
  readonly frame: TrendFrame | null;
  readonly report: (key: string, frame: TrendFrame) => void;
  readonly reportAs: string;
}

interface TrendChartProps extends DrawnTrend {
  readonly trend: Trend;
  readonly onView: (view: View | null) => void;
}

/** A finger cannot drag out a part or aim at a point. */
const isTouched = (): boolean => matchMedia('(hover: none)').matches;

const viewText = ({ min, max }: View) => words.zoom.span(whenText(min * 1000), whenText(max * 1000));

/** A side's course as a picture, in words and as a table. */
export function TrendChart(props: TrendChartProps) {
  const { trend, scale, side, room, measure, frame, report, reportAs, onView } = props;
  const sideIndex = side === null ? 0 : room.sides.indexOf(side);
  const { unit } = measure;
  const own = useMemo(() => frameOfTrend(trend, scale), [trend, scale]);
  const shown = frame ?? own;
  useEffect(() => {
    if (own !== null) report(reportAs, own);
  }, [own, report, reportAs]);
  const spec = useCallback(
    (theme: ChartTheme, library: PlotLibrary) =>
      trendSpec({ trend, scale, sideIndex, frame: shown ?? NOTHING, unit }, theme, library),
    [trend, scale, sideIndex, shown, unit],
  );
  const readout = (index: number | null) => {
    const point = index === null ? undefined : trend.points[index];
    if (point === undefined) return isTouched() ? words.trend.touchHint : words.trend.hint;
    return `${whenText(point.at)}: ${quantity(shownValue(point, scale), measure.unit)}`;
  };
  return (
    <Chart
      title={side === null ? words.trend.bothSides : sideTitle(side)}
      summary={trendSummary(trend, measure.unit, scale)}
      keys={<TrendKeys room={room} trend={trend} scale={scale} sideIndex={sideIndex} />}
      picture={
        <Plot
          spec={spec}
          heightPx={HEIGHT_PX}
          readout={readout}
          viewText={viewText}
          onView={onView}
          onPick={(index) => navigate(`/strokes/${trend.points[index].strokeId}`)}
        />
      }
      table={<TrendTable trend={trend} unit={measure.unit} />}
    />
  );
}
