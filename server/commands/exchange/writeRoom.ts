import { stringify } from 'csv-stringify/sync';
import type { Kysely } from 'kysely';
import { MEASURES } from '../../../analysis/measures.ts';
import type { RecordedTrace } from '../../../ingest/stroke.ts';
import { decodeTrace } from '../../../ingest/traceCodec.ts';
import type { Tables } from '../../../migrations/tables.ts';
import type { AccountInScope } from '../../access/scopes/scope.ts';
import { strokesAndTraces } from '../../results/trace/readTrace.ts';
import { harmless, traceAsJson } from '../../results/trace/traceText.ts';
import { findWarnings } from '../../results/warnings.ts';
import { serviceOf } from '../../things/services.ts';
import { type AddEntry, jsonEntry } from '../archive.ts';
import type { ExportedStroke } from './format.ts';

/** Strokes to a file: one of the largest size is 20 MB of text. */
const STROKES_TO_A_FILE = 50;

/** Writes all that was recorded and found of one room; answers how many strokes. */
export async function writeRoom(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  roomId: string,
  folder: string,
  add: AddEntry,
): Promise<number> {
  const services = await db
    .selectFrom('services')
    .selectAll()
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .orderBy('at')
    .orderBy('id')
    .execute();
  await add(`${folder}/services.json`, jsonEntry(services.map(serviceOf)));
  const warnings = await findWarnings(db, accountId, roomId);
  await add(`${folder}/warnings.json`, jsonEntry(warnings));
  await add(`${folder}/measures.csv`, Buffer.from(await measuresAsCsv(db, accountId, roomId)));
  let strokes = 0;
  for (let file = 1, after: StrokePlace | null = null; ; file++) {
    const rows: StrokeToExport[] = await strokesAfter(db, accountId, roomId, after);
    if (rows.length === 0) return strokes;
    const texts = rows.filter(({ trace }) => trace !== null).map(strokeAsJson);
    const name = `${folder}/strokes-${String(file).padStart(6, '0')}.json`;
    await add(name, Buffer.from(`[\n${texts.join(',\n')}\n]\n`));
    strokes += texts.length;
    after = rows[rows.length - 1];
  }
}

interface StrokePlace {
  readonly placed_at: Date;
  readonly id: string;
}
type StrokeToExport = Awaited<ReturnType<typeof strokesAfter>>[number];

function strokesAfter(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  roomId: string,
  after: StrokePlace | null,
) {
  let query = strokesAndTraces(db)
    .selectAll('s')
    .select('t.trace')
    .where('s.account_id', '=', accountId)
    .where('s.room_id', '=', roomId);
  if (after !== null)
    query = query.where(({ eb, refTuple, tuple }) =>
      eb(refTuple('s.placed_at', 's.id'), '>', tuple(after.placed_at, after.id)),
    );
  return query.orderBy('s.placed_at').orderBy('s.id').limit(STROKES_TO_A_FILE).execute();
}

/** Every number as it was sent: the samples are written by the function that answers a stroke's trace. */
function strokeAsJson({ trace, ...row }: StrokeToExport): string {
  if (trace === null) throw new TypeError('A stroke without samples cannot be exported.');
  const recorded: RecordedTrace = decodeTrace(trace);
  const beside: Omit<ExportedStroke, 'sent'> = {
    id: row.id,
    senderId: row.sender_id,
    loggerId: row.logger_id,
    receivedAt: row.received_at.toISOString(),
    placedAt: row.placed_at.toISOString(),
    placedBy: row.placed_by,
    excluded: row.excluded,
    note: row.note,
  };
  const head = {
    key: row.key,
    roomId: row.room_id,
    ...(row.direction === null ? {} : { direction: row.direction }),
    startedAt: row.started_at.toISOString(),
  };
  // Both are objects with members: the comma joins theirs.
  const sent = `${JSON.stringify(head).slice(0, -1)},${traceAsJson(recorded).slice(1)}`;
  return `${JSON.stringify(beside).slice(0, -1)},"sent":${sent}}`;
}

async function measuresAsCsv(db: Kysely<Tables>, accountId: AccountInScope, roomId: string): Promise<string> {
  const rows = await db
    .selectFrom('measures')
    .select(['placed_at', 'stroke_id', 'direction', 'side', 'value'])
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .orderBy('placed_at')
    .orderBy('stroke_id')
    .orderBy('side')
    .execute();
  const title = ['placedAt', 'strokeId', 'direction', 'side', ...MEASURES.map(({ name }) => name)];
  const cells = rows.map((row) => [
    row.placed_at.toISOString(),
    row.stroke_id,
    row.direction,
    harmless(row.side),
    ...MEASURES.map((_, i) => row.value[i] ?? ''),
  ]);
  return stringify([title, ...cells], { record_delimiter: '\r\n' });
}
