import type { Kysely } from 'kysely';
import { MEASURES } from '../../../analysis/measures.ts';
import type { Queries } from '../../../ingest/queries.ts';
import type { Tables } from '../../../migrations/tables.ts';
import type { AccountInScope } from '../../access/scopes/scope.ts';
import { invalidField } from '../../problems.ts';
import type { Trend, TrendQuery } from '../../schemas/results.ts';
import { findRoom } from '../../things/rooms.ts';
import { limitsOf, normalOf } from '../roomLimits.ts';
import { aroundTrend } from './aroundTrend.ts';
import { forecastFrom } from './forecast.ts';
import { trendPoints } from './trendPoints.ts';

/**
 * The trend of one measure as JSON text of the `Trend` schema. A room has tens of thousands of strokes after some
 * years: the points go out as text without an object and a check for each, which takes a third of the time.
 */
export async function trendText(
  db: Kysely<Tables>,
  pool: Queries,
  accountId: AccountInScope,
  roomId: string,
  question: TrendQuery,
): Promise<string> {
  const { measure, direction } = question;
  // A side that is named is not waited for: whether the room has it is found out beside its points.
  const side = question.side ?? sideOf((await findRoom(db, accountId, roomId)).sides, question);
  const place = { accountId, roomId, side };
  const [{ text, thinned }, around] = await Promise.all([
    trendPoints(pool, place, question),
    aroundTrend(pool, place, question),
  ]);
  const { sides, services, levels } = around;
  sideOf(sides, question);
  const limits = limitsOf(around.limits, { measure, side, direction });
  const normal = normalOf(around.limits, { measure, side, direction });
  const forecast = normal === null ? null : forecastFrom(levels, normal);
  const rest: Omit<Trend, 'points'> = { limits, services, forecast, ...(thinned && { thinned }) };
  return `{"points":${text},${JSON.stringify(rest).slice(1)}`;
}

/** A measure of the whole stroke stands beside every side. */
function sideOf(sides: readonly string[], { measure, side }: TrendQuery): string {
  if (side !== undefined) {
    if (sides.includes(side)) return side;
    throw invalidField('/side', `The room has no such side. It has: ${sides.join(', ')}.`);
  }
  const ofStroke = MEASURES.some(({ name, of }) => name === measure && of === 'stroke');
  if (sides.length === 1 || ofStroke) return sides[0];
  throw invalidField('/side', `Say which side: ${sides.join(', ')}.`);
}
