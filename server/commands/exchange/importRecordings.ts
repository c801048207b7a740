import { readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { Kysely } from 'kysely';
import type { PoolClient } from 'pg';
import { DecodeError } from '../../../ingest/decodeError.ts';
import { readForm } from '../../../ingest/forms/readForm.ts';
import { decodeStrokes } from '../../../ingest/json/strokes.ts';
import { prepareStroke, type Sender, storeStrokes } from '../../../ingest/storeStrokes.ts';
import type { StrokeToStore } from '../../../ingest/strokeToStore.ts';
import type { Tables } from '../../../migrations/tables.ts';
import { OperatorError } from '../../operatorError.ts';
import type { Progress } from '../progress.ts';

interface RecordingOptions {
  readonly roomId: string;
  readonly rateHz?: string;
  readonly side?: string;
  /** The side that the only current of a file is of: that of a room which has but one. */
  readonly roomSides?: readonly string[];
  readonly direction?: string;
}

export interface ImportedRecordings {
  stored: number;
  /** Were there already. */
  duplicate: number;
  refused: { file: string; why: string }[];
}

/** Larger ones are no recording of strokes. */
const LARGEST_FILE_BYTES = 256 * 1024 * 1024;
/** A time in a file's name, as loggers write it: 2026-05-02T16-20-11Z, 20260502T162011Z. */
const TIME_IN_NAME =
  /(\d{4})-?(\d\d)-?(\d\d)[T_ ](\d\d)[-:.]?(\d\d)[-:.]?(\d\d)(?:\.\d{1,20})?(Z|[+-]\d\d[:-]?\d\d)/;

/** Who the strokes of a room are imported as: its coach's logger, where it has just one, or the one that is named. */
export async function senderFor(
  db: Kysely<Tables>,
  roomId: string,
  loggerId: string | undefined,
): Promise<Sender> {
  const found = await db
    .selectFrom('rooms as r')
    .innerJoin('loggers as l', (join) =>
      join.onRef('l.account_id', '=', 'r.account_id').onRef('l.coach_id', '=', 'r.coach_id'),
    )
    .select(['r.account_id as accountId', 'r.coach_id as coachId', 'l.id as loggerId', 'l.name'])
    .where('r.id', '=', roomId)
    // A command sees the rooms of deleted coaches too.
    .where('r.deleted_at', 'is', null)
    .execute();
  const fit = loggerId === undefined ? found : found.filter((one) => one.loggerId === loggerId);
  if (fit.length === 1) {
    const [{ accountId, coachId, loggerId: id }] = fit;
    return { accountId, coachId, loggerId: id, senderId: id };
  }
  if (found.length === 0)
    throw new OperatorError(`There is no room ${roomId}, or its coach has no logger: create one first.`);
  const known = found.map((one) => `  ${one.loggerId}  ${one.name}`).join('\n');
  throw new OperatorError(`Say which logger recorded them, with --logger:\n${known}`);
}

/** Undefined where there is no such room. */
export async function sidesOf(db: Kysely<Tables>, roomId: string): Promise<readonly string[] | undefined> {
  const room = await db.selectFrom('rooms').select('sides').where('id', '=', roomId).executeTakeFirst();
  return room?.sides;
}

/** Sends every CSV file of a folder, by order of name; one that cannot be read does not hold back the others. */
export async function importRecordings(
  client: PoolClient,
  sender: Sender,
  folder: string,
  options: RecordingOptions,
  progress: Progress,
): Promise<ImportedRecordings> {
  const names = (await readdir(folder)).filter((name) => /\.csv$/i.test(name)).sort();
  if (names.length === 0) throw new OperatorError(`There is no .csv file in ${folder}.`);
  const result: ImportedRecordings = { stored: 0, duplicate: 0, refused: [] };
  progress.begin('Recordings', names.length);
  for (const name of names) {
    try {
      const strokes = await strokesOf(join(folder, name), name, sender, options);
      for (const outcome of await storeStrokes(client, strokes)) {
        if (outcome.outcome === 'stored') result.stored++;
        else if (outcome.outcome === 'duplicate') result.duplicate++;
        else result.refused.push({ file: name, why: whyRefused(outcome) });
      }
    } catch (error) {
      if (!(error instanceof DecodeError)) throw error;
      result.refused.push({ file: name, why: error.message });
    }
    progress.add(1);
  }
  progress.end();
  return result;
}

async function strokesOf(
  path: string,
  name: string,
  sender: Sender,
  { roomId, rateHz, side, roomSides, direction }: RecordingOptions,
): Promise<StrokeToStore[]> {
  const { size } = await stat(path);
  if (size > LARGEST_FILE_BYTES)
    throw DecodeError.at('', 'The file is too large for a recording of strokes.');
  const query = { roomId, key: name, startedAt: timeIn(name), rateHz, side, roomSides, direction };
  const { strokes } = readForm('text/csv', await readFile(path), query, Date.now());
  return decodeStrokes(strokes).map(({ stroke, ...rest }) => {
    if (stroke !== null) return prepareStroke(sender, stroke);
    throw 'error' in rest ? rest.error : DecodeError.at('', 'The stroke cannot be read.');
  });
}

function timeIn(name: string): string | undefined {
  const match = TIME_IN_NAME.exec(name);
  if (match === null) return undefined;
  const [, year, month, day, hours, minutes, seconds, zone] = match;
  const offset = zone === 'Z' ? 'Z' : `${zone.slice(0, 3)}:${zone.slice(-2)}`;
  return `${year}-${month}-${day}T${hours}:${minutes}:${seconds}${offset}`;
}

function whyRefused(outcome: { outcome: string; sides?: readonly string[] }): string {
  return outcome.outcome === 'unknown-sides'
    ? `The room has no side called ${outcome.sides?.join(', ')}.`
    : 'There is no such room.';
}
