import { type Kysely, sql } from 'kysely';
import { measureStroke } from '../../../analysis/measureStroke.ts';
import type { StrokeAnalysis } from '../../../analysis/measures.ts';
import type { Direction } from '../../../analysis/trace.ts';
import { toStrokeTrace } from '../../../ingest/stroke.ts';
import { decodeTrace } from '../../../ingest/traceCodec.ts';
import type { Tables } from '../../../migrations/tables.ts';
import type { AnalysisLog } from '../inHand/analysisLog.ts';
import { SET_ASIDE_REASONS } from '../inHand/setAsideReasons.ts';
import type { Turns } from '../inHand/turns.ts';
import type { RoomToAnalyse } from '../reading/readRoom.ts';

/** Strokes measured between two writes. */
const BATCH = 25;

interface Unmeasured {
  readonly account_id: string;
  readonly room_id: string;
  readonly id: string;
  readonly direction: Direction | null;
  readonly trace: Buffer | null;
  readonly cut_short: boolean;
}

/** A stroke's analysis, with what it was made from: the room as it was described then, and the direction. */
interface MeasuredStroke extends Omit<Unmeasured, 'trace'> {
  readonly version: string;
  readonly analysis: StrokeAnalysis;
}

/**
 * Measures a batch of the rooms' strokes that have no analysis yet, oldest first. Answers whether there may be more.
 * A stroke that was changed meanwhile keeps none and comes again.
 */
export async function measureBatch(
  db: Kysely<Tables>,
  rooms: readonly RoomToAnalyse[],
  log: AnalysisLog,
  turns: Turns,
): Promise<boolean> {
  const strokes = await readUnmeasured(db, rooms);
  if (strokes.length === 0) return false;
  const byId = new Map(rooms.map((room) => [room.roomId, room]));
  const results: MeasuredStroke[] = [];
  for (const { trace, ...stroke } of strokes) {
    await turns.next();
    const room = byId.get(stroke.room_id);
    if (room === undefined) continue;
    results.push({
      ...stroke,
      version: room.version,
      analysis: measure({ trace, ...stroke }, room, log, turns),
    });
  }
  const written = await writeAnalyses(db, results);
  return written > 0n && strokes.length === BATCH;
}

/** Answers how many were written: results of an older description of the room, or of another direction, are not. */
async function writeAnalyses(db: Kysely<Tables>, results: readonly MeasuredStroke[]): Promise<bigint> {
  const { numAffectedRows } = await sql`
    with results as materialized (
      select * from json_to_recordset(${JSON.stringify(results)}::json)
        as x (account_id uuid, room_id uuid, id uuid, direction text, version text, analysis jsonb)
    ), held as materialized (
      -- Before their strokes, as whoever removes a room does.
      select r.account_id, r.id, r.xmin::text as version from rooms r
      where (r.account_id, r.id) in (select account_id, room_id from results)
      order by r.account_id, r.id for key share
    )
    update strokes s set analysis = x.analysis
    from results x join held r on r.account_id = x.account_id and r.id = x.room_id and r.version = x.version
    where s.account_id = x.account_id and s.id = x.id and s.room_id = x.room_id
      and s.direction is not distinct from x.direction
  `.execute(db);
  return numAffectedRows ?? 0n;
}

async function readUnmeasured(
  db: Kysely<Tables>,
  rooms: readonly RoomToAnalyse[],
): Promise<readonly Unmeasured[]> {
  const { rows } = await sql<Unmeasured>`
    select s.account_id, s.room_id, s.id, s.direction, s.cut_short, t.trace
    from unnest(
      ${rooms.map(({ accountId }) => accountId)}::uuid[], ${rooms.map(({ roomId }) => roomId)}::uuid[]
    ) as k (account_id, room_id)
    join room_progress p on p.account_id = k.account_id and p.room_id = k.room_id
    cross join lateral (
      select account_id, room_id, id, direction, cut_short, received_at from strokes
      where account_id = k.account_id and room_id = k.room_id and analysis is null
        -- None is older, and the search would else go through the room's whole history.
        and placed_at >= p.dirty_from
      order by placed_at, id limit ${BATCH}
    ) s
    left join traces t
      on t.account_id = s.account_id and t.stroke_id = s.id and t.received_at = s.received_at
    limit ${BATCH}
  `.execute(db);
  return rows;
}

function measure(stroke: Unmeasured, room: RoomToAnalyse, log: AnalysisLog, { hand }: Turns): StrokeAnalysis {
  if (stroke.cut_short) return { status: 'unusable', reason: 'The record ended before the stroke did.' };
  const { trace } = stroke;
  if (trace === null) return { status: 'unusable', reason: 'Its samples are no longer kept.' };
  try {
    return hand.holding(stroke.id, () =>
      measureStroke(toStrokeTrace(decodeTrace(trace), stroke.direction), room.description),
    );
  } catch (error) {
    log.error({ err: error, strokeId: stroke.id }, 'A stroke could not be measured.');
    return { status: 'unusable', reason: SET_ASIDE_REASONS.measuring };
  }
}
