import { type Kysely, sql } from 'kysely';
import { measureStroke } from '../../analysis/measureStroke.ts';
import type { StrokeAnalysis } from '../../analysis/measures.ts';
import type { Direction } from '../../analysis/trace.ts';
import { toStrokeTrace } from '../../ingest/stroke.ts';
import { decodeTrace } from '../../ingest/traceCodec.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { RoomToAnalyse } from './roomRow.ts';
import type { AnalysisLog } from './threadMessages.ts';
import type { Turns } from './turns.ts';

/** Strokes measured between two writes. */
const BATCH = 25;

interface MeasuredStroke {
  readonly id: string;
  /** As it was given when it was measured. */
  readonly direction: Direction | null;
  readonly analysis: StrokeAnalysis;
}

interface Unmeasured {
  readonly id: string;
  readonly direction: Direction | null;
  readonly trace: Buffer | null;
  readonly cut_short: boolean;
}

/**
 * Measures a batch of the room's strokes that have no analysis yet, oldest first. Answers whether there may be more.
 * A stroke that was changed meanwhile keeps none and comes again.
 */
export async function measureBatch(
  db: Kysely<Tables>,
  room: RoomToAnalyse,
  log: AnalysisLog,
  turns: Turns,
): Promise<boolean> {
  const strokes = await readUnmeasured(db, room);
  if (strokes.length === 0) return false;
  const results: MeasuredStroke[] = [];
  for (const stroke of strokes) {
    await turns.next();
    results.push({ id: stroke.id, direction: stroke.direction, analysis: measure(stroke, room, log) });
  }
  const written = await writeAnalyses(db, room, results);
  return written > 0n && strokes.length === BATCH;
}

/** Answers how many were written: results of an older description of the room, or of another direction, are not. */
async function writeAnalyses(
  db: Kysely<Tables>,
  room: RoomToAnalyse,
  results: readonly MeasuredStroke[],
): Promise<bigint> {
  const { numAffectedRows } = await sql`
    update strokes s set analysis = x.analysis
    from json_to_recordset(${JSON.stringify(results)}::json) as x (id uuid, direction text, analysis jsonb)
    where s.account_id = ${room.accountId} and s.id = x.id and s.room_id = ${room.roomId}
      and s.direction is not distinct from x.direction
      and exists (
        select from rooms r
        where r.account_id = ${room.accountId} and r.id = ${room.roomId} and r.xmin::text = ${room.version}
      )
  `.execute(db);
  return numAffectedRows ?? 0n;
}

function readUnmeasured(db: Kysely<Tables>, room: RoomToAnalyse): Promise<Unmeasured[]> {
  return (
    db
      .selectFrom('strokes as s')
      .leftJoin('traces as t', (join) =>
        join
          .onRef('t.account_id', '=', 's.account_id')
          .onRef('t.stroke_id', '=', 's.id')
          .onRef('t.received_at', '=', 's.received_at'),
      )
      .innerJoin('room_progress as p', (join) =>
        join.onRef('p.account_id', '=', 's.account_id').onRef('p.room_id', '=', 's.room_id'),
      )
      .select(['s.id', 's.direction', 's.cut_short', 't.trace'])
      .where('s.account_id', '=', room.accountId)
      .where('s.room_id', '=', room.roomId)
      .where('s.analysis', 'is', null)
      // None is older, and the search would else go through the room's whole history.
      .whereRef('s.placed_at', '>=', 'p.dirty_from')
      .orderBy('s.placed_at')
      .orderBy('s.id')
      .limit(BATCH)
      .execute()
  );
}

function measure(stroke: Unmeasured, room: RoomToAnalyse, log: AnalysisLog): StrokeAnalysis {
  if (stroke.cut_short) return { status: 'unusable', reason: 'The record ended before the stroke did.' };
  if (stroke.trace === null) return { status: 'unusable', reason: 'Its samples are no longer kept.' };
  try {
    return measureStroke(toStrokeTrace(decodeTrace(stroke.trace), stroke.direction), room.description);
  } catch (error) {
    log.error({ err: error, strokeId: stroke.id }, 'A stroke could not be measured.');
    return { status: 'unusable', reason: 'The record could not be measured.' };
  }
}
