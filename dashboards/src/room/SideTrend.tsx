import { useCallback, useEffect, useMemo } from 'preact/hooks';
import type { Direction, MeasureTitle, Room, Trend } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { useRefresh } from '../api/useRefresh.ts';
import { Chart } from '../charts/Chart.tsx';
import { BandKey, BeyondKey, ExpectedKey, HollowKey, LineKey, WorkKey } from '../charts/keys.tsx';
import { Plot } from '../charts/Plot.tsx';
import type { ChartTheme } from '../charts/theme.ts';
import { shownValue, type TrendScale, trendExtent, trendSpec } from '../charts/trendSpec.ts';
import { Loaded } from '../components/states.tsx';
import { quantity, whenText } from '../format.ts';
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

function Keys({ trend, scale, sideIndex }: { trend: Trend; scale: TrendScale; sideIndex: number }) {
  const say = words.trend;
  return (
    <>
      <LineKey
        text={say.point(scale === 'adjusted' ? say.adjusted : say.asMeasured)}
        side={sideIndex}
        solid
      />
      {scale === 'adjusted' && trend.limits !== null && <BandKey text={say.normal} />}
      {scale === 'adjusted' && trend.limits !== null && <ExpectedKey text={say.centre} />}
      {scale === 'measured' && trend.points.some((p) => p.expected !== null) && (
        <ExpectedKey text={say.expected} />
      )}
      {trend.points.some((p) => p.beyond === true) && <BeyondKey text={say.beyond} />}
      {trend.points.some((p) => p.beyond === null) && <HollowKey text={say.learning} side={sideIndex} />}
      {trend.services.length > 0 && <WorkKey text={say.service} />}
    </>
  );
}

function TrendChart(props: SideTrendProps & { readonly trend: Trend }) {
  const { trend, scale, side, room, measure, extent, report, reportAs } = props;
  const sideIndex = side === null ? 0 : room.sides.indexOf(side);
  const { unit } = measure;
  const own = useMemo(() => trendExtent(trend, scale), [trend, scale]);
  const [low, high] = extent ?? own ?? [0, 1];
  useEffect(() => {
    if (own !== null) report(reportAs, own);
  }, [own, report, reportAs]);
  const spec = useCallback(
    (theme: ChartTheme) => trendSpec({ trend, scale, sideIndex, extent: [low, high], unit }, theme),
    [trend, scale, sideIndex, low, high, unit],
  );
  const readout = (index: number | null) => {
    const point = index === null ? undefined : trend.points[index];
    if (point === undefined) return words.trend.hint;
    return `${whenText(point.at)}: ${quantity(shownValue(point, scale), measure.unit)}`;
  };
  return (
    <Chart
      title={side === null ? words.trend.bothSides : sideTitle(side)}
      summary={trendSummary(trend, measure.unit, scale)}
      keys={<Keys trend={trend} scale={scale} sideIndex={sideIndex} />}
      picture={
        <Plot
          spec={spec}
          heightPx={HEIGHT_PX}
          readout={readout}
          onPick={(index) => navigate(`/strokes/${trend.points[index].strokeId}`)}
        />
      }
      table={<TrendTable trend={trend} unit={measure.unit} />}
    />
  );
}

export function SideTrend(props: SideTrendProps) {
  const { room, measure, direction, side, version } = props;
  const asked = new URLSearchParams({ measure: measure.name, direction });
  if (side !== null) asked.set('side', side);
  const load = useLoad<Trend>(`/rooms/${room.id}/trend?${asked}`);
  useRefresh(version, load.reload);
  return (
    <Loaded load={load}>
      {(trend) =>
        trend.points.length === 0 ? (
          <div class="empty">
            <h3 dir="auto">{side === null ? words.trend.bothSides : sideTitle(side)}</h3>
            <p>{words.trend.empty}</p>
          </div>
        ) : (
          <TrendChart {...props} trend={trend} />
        )
      }
    </Loaded>
  );
}
