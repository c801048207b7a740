import { useCallback, useState } from 'preact/hooks';
import type { Direction, Trend } from '../../api/types.ts';
import { useLoad } from '../../api/useLoad.ts';
import { useRefresh } from '../../api/useRefresh.ts';
import type { View } from '../../charts/plot/view.ts';
import { Loaded } from '../../components/coming/states.tsx';
import { sideTitle } from '../../sideName.ts';
import { words } from '../../words.ts';
import { type DrawnTrend, TrendChart } from './TrendChart.tsx';

interface SideTrendProps extends DrawnTrend {
  readonly direction: Direction;
  readonly version: string;
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
