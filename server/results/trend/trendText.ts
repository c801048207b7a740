import type { Kysely } from 'kysely';
import { DIRECTIONS } from '../../../analysis/trace.ts';
import type { Queries } from '../../../ingest/queries.ts';
import type { Tables } from '../../../migrations/tables.ts';
import type { AccountInScope } from '../../access/scopes/scope.ts';
import { invalidField } from '../../problems.ts';
import type { Trend, TrendQuery } from '../../schemas/results.ts';
import { findRoom } from '../../things/rooms.ts';
import { limitsOf, normalOf } from '../roomLimits.ts';
import { aroundTrend } from './aroundTrend.ts';
import { forecastFrom } from './forecastFrom.ts';
import { isOfStroke, isOneSeries, trendPoints } from './trendPoints.ts';

/**
 * The trend of one measure, of one side and direction or of several, as JSON text of the `Trend` schema. A room has tens
 * of thousands of strokes after some years: the points go out as text without an object and a check for each, which
 * takes a third of the time.
 */
export async function trendText(
  db: Kysely<Tables>,
  pool: Queries,
  accountId: AccountInScope,
  roomId: string,
  question: TrendQuery,
): Promise<string> {
  const { measure } = question;
  // A side that is named is not waited for: whether the room has it is found out beside its points.
  const sides =
    question.side === undefined
      ? sidesOf((await findRoom(db, accountId, roomId)).sides, question)
      : [question.side];
  const directions = question.direction === undefined ? DIRECTIONS : [question.direction];
  const place = { accountId, roomId, sides, directions };
  const [{ text, thinned }, around] = await Promise.all([
    trendPoints(pool, place, question),
    aroundTrend(pool, place, question),
  ]);
  sidesOf(around.sides, question);
  const { services, levels } = around;
  const one = isOneSeries(place) ? { measure, side: sides[0], direction: directions[0] } : null;
  const limits = one && limitsOf(around.limits, one);
  const normal = one && normalOf(around.limits, one);
  const forecast = normal === null ? null : forecastFrom(levels, normal);
  const rest: Omit<Trend, 'points'> = { limits, services, forecast, ...(thinned && { thinned }) };
  return `{"points":${text},${JSON.stringify(rest).slice(1)}`;
}

/** Those whose points are asked for. A measure of the whole stroke stands beside every side. */
function sidesOf(sides: readonly string[], { measure, side }: TrendQuery): readonly string[] {
  if (side !== undefined) {
    if (sides.includes(side)) return [side];
    throw invalidField('/side', `The room has no such side. It has: ${sides.join(', ')}.`);
  }
  return isOfStroke(measure) ? [sides[0]] : sides;
}
