import { useCallback, useEffect, useMemo, useState } from 'preact/hooks';
import type { Direction, MeasureTitle, Room, Trend } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { useRefresh } from '../api/useRefresh.ts';
import { Chart } from '../charts/Chart.tsx';
import {
  BandKey,
  BeyondKey,
  ExpectedKey,
  ForecastKey,
  HollowKey,
  LineKey,
  WorkKey,
} from '../charts/keys.tsx';
import { Plot, type PlotLibrary } from '../charts/Plot.tsx';
import type { ChartTheme } from '../charts/theme.ts';
import { trendSpec } from '../charts/trendSpec.ts';
import { shownValue, type TrendScale, trendExtent } from '../charts/trendValues.ts';
import type { View } from '../charts/view.ts';
import { Loaded } from '../components/states.tsx';
import { quantity, referenceText, whenText } from '../format.ts';
import { navigate } from '../router.ts';
import { sideTitle } from '../sideName.ts';
import { words } from '../words.ts';
import { TrendTable } from './TrendTable.tsx';
import { trendSummary } from './trendSummary.ts';

const HEIGHT_PX = 230;

interface SideTrendProps {
  readonly room: Room;
  readonly measure: MeasureTitle;
  readonly direction: Direction;
  /** null: the measure is of the whole stroke. */
  readonly side: string | null;
  readonly scale: TrendScale;
  readonly version: string;
  /** Of all sides that are shown, so that their pictures can be compared by eye; null until one is known. */
  readonly extent: readonly [number, number] | null;
  readonly report: (key: string, extent: readonly [number, number]) => void;
  readonly reportAs: string;
}

interface KeysProps {
  readonly room: Room;
  readonly trend: Trend;
  readonly scale: TrendScale;
  readonly sideIndex: number;
}

function Keys({ room, trend, scale, sideIndex }: KeysProps) {
  const say = words.trend;
  return (
    <>
      <LineKey
        text={say.point(scale === 'adjusted' ? say.adjusted(referenceText(room)) : say.asMeasured)}
        side={sideIndex}
        solid
      />
      {scale === 'adjusted' && trend.limits !== null && <BandKey text={say.normal} />}
      {scale === 'adjusted' && trend.limits !== null && <ExpectedKey text={say.centre} />}
      {scale === 'measured' && trend.points.some((p) => p.expected !== null) && (
        <ExpectedKey text={say.expected} />
      )}
      {trend.points.some((p) => p.beyond) && <BeyondKey text={say.beyond} />}
      {trend.points.some((p) => p.expected === null) && <HollowKey text={say.learning} side={sideIndex} />}
      {trend.services.length > 0 && <WorkKey text={say.service} />}
      {scale === 'adjusted' && trend.forecast !== null && <ForecastKey text={say.forecast} />}
    </>
  );
}

interface TrendChartProps extends SideTrendProps {
  readonly trend: Trend;
  readonly onView: (view: View | null) => void;
}

/** A finger cannot drag out a part or aim at a point. */
const isTouched = (): boolean => matchMedia('(hover: none)').matches;

const viewText = ({ min, max }: View) => words.zoom.span(whenText(min * 1000), whenText(max * 1000));

function TrendChart(props: TrendChartProps) {
  const { trend, scale, side, room, measure, extent, report, reportAs, onView } = props;
  const sideIndex = side === null ? 0 : room.sides.indexOf(side);
  const { unit } = measure;
  const own = useMemo(() => trendExtent(trend, scale), [trend, scale]);
  const [low, high] = extent ?? own ?? [0, 1];
  useEffect(() => {
    if (own !== null) report(reportAs, own);
  }, [own, report, reportAs]);
  const spec = useCallback(
    (theme: ChartTheme, library: PlotLibrary) =>
      trendSpec({ trend, scale, sideIndex, extent: [low, high], unit }, theme, library),
    [trend, scale, sideIndex, low, high, unit],
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
      keys={<Keys room={room} trend={trend} scale={scale} sideIndex={sideIndex} />}
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

/** The lowest and the highest of every few pixels: dots that lie closer nobody can tell apart. */
const POINTS = { least: 400, most: 800, step: 100 };

/** A small screen, which is often at the end of a weak line, shows fewer. */
function pointsOfScreen(): number {
  const wide = Math.ceil(screen.width / POINTS.step) * POINTS.step;
  return Math.min(POINTS.most, Math.max(POINTS.least, wide));
}

/** Years of strokes come thinned, and all of them once somebody looks closer. */
export function SideTrend(props: SideTrendProps) {
  const { room, measure, direction, side, version } = props;
  const [closer, setCloser] = useState(false);
  const [points] = useState(pointsOfScreen);
  const asked = new URLSearchParams({ measure: measure.name, direction });
  if (side !== null) asked.set('side', side);
  const path = `/rooms/${room.id}/trend?${asked}`;
  const load = useLoad<Trend>(`${path}&points=${points}`);
  const whole = useLoad<Trend>(closer && load.value?.thinned !== undefined ? path : null);
  useRefresh(version, load.reload);
  useRefresh(version, whole.reload);
  const onView = useCallback((view: View | null) => view !== null && setCloser(true), []);
  return (
    <Loaded load={load}>
      {(trend) =>
        trend.points.length === 0 ? (
          <div class="empty">
            <h3 dir="auto">{side === null ? words.trend.bothSides : sideTitle(side)}</h3>
            <p>{words.trend.empty}</p>
          </div>
        ) : (
          <TrendChart {...props} trend={whole.value ?? trend} onView={onView} />
        )
      }
    </Loaded>
  );
}
