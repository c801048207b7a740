import type { Kysely } from 'kysely';
import { downsample } from '../../../analysis/statistics/downsample.ts';
import type { Direction } from '../../../analysis/trace.ts';
import { type AlongTravel, travelTrace } from '../../../analysis/travelTrace.ts';
import { toStrokeTrace } from '../../../ingest/stroke.ts';
import type { Tables } from '../../../migrations/tables.ts';
import type { AccountInScope } from '../../access/scopes/scope.ts';
import { notFound } from '../../problems.ts';
import type { TravelTrace } from '../../schemas/travel.ts';
import { describeRoom } from '../../things/describeRoom.ts';
import { findRoom } from '../../things/rooms.ts';
import { findStroke } from '../strokeView.ts';
import { readTrace } from './readTrace.ts';

/** A stroke's samples by where the room was; at most so many points a side. */
export async function travelOfStroke(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  strokeId: string,
  points: number,
): Promise<TravelTrace> {
  const stroke = await findStroke(db, accountId, strokeId);
  const room = await findRoom(db, accountId, stroke.room_id);
  const recorded = await readTrace(db, accountId, strokeId);
  const direction: Direction | null = stroke.direction;
  const found = travelTrace(toStrokeTrace(recorded, direction), describeRoom(room));
  if (found === null) throw notFound('travel in this stroke');
  return {
    direction: found.direction,
    sides: found.sides.map(({ side, inrushEnd, endStop, pauses, ...along }) => {
      const { positions, values } = thin(along, points);
      return { side, positions, amps: values, inrushEnd, endStop, pauses: [...pauses] };
    }),
    supply: found.supply && named(thin(found.supply, points)),
    ambientC: recorded.ambientC,
  };
}

function named({ positions, values }: { positions: number[]; values: number[] }) {
  return { positions, volts: values };
}

/** Keeps the smallest and the largest value of each stretch. */
function thin({ positions, values }: AlongTravel, points: number) {
  const kept = values.length <= points ? [...values.keys()] : downsample(values, Math.floor(points / 2));
  return {
    positions: kept.map((i) => round(positions[i], 1e5)),
    values: kept.map((i) => round(values[i], 1e4)),
  };
}

function round(value: number, parts: number): number {
  return Math.round(value * parts) / parts;
}
