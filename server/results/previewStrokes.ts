import { createHash } from 'node:crypto';
import type { Kysely } from 'kysely';
import { previewCsv } from '../../ingest/csv/previewCsv.ts';
import { textOfTable } from '../../ingest/csv/textOfTable.ts';
import type { SentQuery } from '../../ingest/forms/sentForm.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';
import type { StrokesPreview } from '../schemas/preview.ts';
import { findRoom } from '../things/rooms.ts';

/** What would be made of a CSV recording of this room. Nothing is stored. */
export async function previewStrokes(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  roomId: string,
  bytes: Uint8Array,
  query: SentQuery,
): Promise<StrokesPreview> {
  const room = await findRoom(db, accountId, roomId);
  const read = { sides: room.sides, positiveDirection: room.positive_direction };
  const preview = previewCsv(textOfTable(bytes), query, read);
  const { startedAtMs, columns, strokes, sides, supply, ...rest } = preview;
  const problems = [...preview.problems, ...impossibleStart(startedAtMs, Date.now())];
  return {
    key: keyOf(roomId, bytes, query),
    ...rest,
    columns: columns.map((column) => ({ ...column, examples: [...column.examples] })),
    startedAt: timeOf(startedAtMs),
    strokes: strokes.map(({ startedAtMs: atMs, ...stroke }) => ({ ...stroke, startedAt: timeOf(atMs) })),
    sides: sides.map(lineOf),
    supply: supply && lineOf(supply),
    problems,
  };
}

/** Before any logger of this kind was built. */
const EARLIEST_MS = Date.UTC(2015, 0);
/** As far as zones lie apart. */
const MOST_AHEAD_MS = 24 * 3_600_000;

/** A logger whose clock is wrong is placed by its arrival; whoever looks at a file can say when it was recorded. */
function impossibleStart(startedAtMs: number | null, nowMs: number): { pointer: string; detail: string }[] {
  if (startedAtMs === null) return [];
  const pointer = '/startedAt';
  if (startedAtMs > nowMs + MOST_AHEAD_MS) return [{ pointer, detail: 'The recording began in the future.' }];
  return startedAtMs < EARLIEST_MS ? [{ pointer, detail: 'The recording began before 2015.' }] : [];
}

/** The same file of the same room read in the same way is the same strokes, whoever sends it how often. */
function keyOf(
  roomId: string,
  bytes: Uint8Array,
  { startedAt, rateHz, direction, columns, side }: SentQuery,
): string {
  // Last, and only where it was said: files whose side nobody named keep the key that they were stored under.
  const read = [roomId, startedAt, rateHz, direction, columns, ...(side === undefined ? [] : [side])];
  const said = JSON.stringify(read);
  return `file-${createHash('sha256').update(said).update(bytes).digest('base64url')}`;
}

/** A day beyond the calendar has no name; that it cannot be stored is among the problems. */
function timeOf(ms: number | null): string | null {
  return ms === null || Math.abs(ms) > LAST_MS ? null : new Date(ms).toISOString();
}

const LAST_MS = Date.UTC(9999, 0);

function lineOf({
  name,
  seconds,
  values,
}: {
  name: string;
  seconds: readonly number[];
  values: readonly number[];
}) {
  return { name, seconds: [...seconds], values: [...values] };
}
