import type { Queries } from '../../../ingest/queries.ts';
import { notFound } from '../../problems.ts';
import type { TrendQuery } from '../../schemas/results.ts';
import type { Service } from '../../schemas/service.ts';
import { measurePlace } from '../measurePlace.ts';
import type { RoomLimits } from '../roomLimits.ts';
import { LEVELS, RISING } from './forecastFrom.ts';
import { isOneSeries, type TrendPlace } from './trendPoints.ts';

/** What a trend is read against. */
interface AroundTrend {
  readonly sides: readonly string[];
  /** Of every measure, side and direction. */
  readonly limits: readonly RoomLimits[];
  /** Those of the span, oldest first. */
  readonly services: Service[];
  /**
   * The measure's latest adjusted values since the last work, oldest first; none of a measure that wear does not move,
   * nor of several series.
   */
  readonly levels: readonly number[];
}

/**
 * All that a trend shows beside its points, in one statement that is planned once: each by itself takes a connection of
 * its own from the pool, and longer to plan than to do.
 */
export async function aroundTrend(
  pool: Queries,
  place: TrendPlace,
  { measure, from, to }: TrendQuery,
): Promise<AroundTrend> {
  const index = measurePlace(measure);
  const { accountId, roomId } = place;
  const most = RISING.has(measure) && isOneSeries(place) ? LEVELS : 0;
  const { rows } = await pool.query<AroundTrend>({
    name: `around-trend-${index}-${most}`,
    text: `
      select r.sides, coalesce(x.limits, '[]') as limits,
        array(
          select json_build_object('id', id, 'roomId', room_id, 'kind', kind, 'at', at, 'side', side,
            'notes', notes, 'createdAt', created_at, 'updatedAt', updated_at)
          from services
          where account_id = $1 and room_id = $2 and at >= $5::timestamptz and at <= $6::timestamptz
          order by at, id
        ) as services,
        array(
          select adjusted[${index}] from measures
          where account_id = $1 and room_id = $2 and side = $3 and direction = $4 and adjusted[${index}] > 0
            and placed_at >= coalesce(
              (select max(at) from services where account_id = $1 and room_id = $2), '-infinity')
          order by placed_at desc, stroke_id desc limit ${most}
        ) as levels
      from rooms r left join room_results x on x.account_id = r.account_id and x.room_id = r.id
      where r.account_id = $1 and r.id = $2`,
    values: [accountId, roomId, place.sides[0], place.directions[0], from ?? '-infinity', to ?? 'infinity'],
  });
  if (rows.length === 0) throw notFound('room');
  const [{ sides, limits, services, levels }] = rows;
  return { sides, limits, services: services.map(inUtc), levels: levels.toReversed() };
}

/** Postgres writes times as they are where its server stands. */
function inUtc(service: Service): Service {
  const [at, createdAt, updatedAt] = [service.at, service.createdAt, service.updatedAt].map((time) =>
    new Date(time).toISOString(),
  );
  return { ...service, at, createdAt, updatedAt };
}
