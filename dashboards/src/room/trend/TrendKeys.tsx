import type { Room, Trend } from '../../api/types.ts';
import {
  BandKey,
  BeyondKey,
  ExpectedKey,
  ForecastKey,
  HollowKey,
  LineKey,
  WorkKey,
} from '../../charts/drawn/keys.tsx';
import type { TrendScale } from '../../charts/trend/trendValues.ts';
import { referenceText } from '../../format.ts';
import { words } from '../../words.ts';

interface KeysProps {
  readonly room: Room;
  readonly trend: Trend;
  readonly scale: TrendScale;
  readonly sideIndex: number;
}

/** What each line, mark and ground of a trend's picture is. */
export function TrendKeys({ room, trend, scale, sideIndex }: KeysProps) {
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
