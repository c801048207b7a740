import type { GroupCommit } from '../../ingest/groupCommit.ts';
import { rowsOfCaller } from '../access/callers/databaseOfCaller.ts';
import { type Database, inScope } from '../database/openDatabase.ts';
import { invalidField } from '../problems.ts';
import { problemOf } from '../requests/errorHandler.ts';
import { sendStrokes } from '../results/sendStrokes.ts';
import { type Envelope, formOf, readEnvelope, writeResult } from './envelope.ts';
import { senderOfMessage } from './senderOfMessage.ts';

export interface MessageParts {
  readonly database: Database;
  readonly store: GroupCommit;
  /** The broker's own rules vouch for the logger in the topic. */
  readonly trustTopic: boolean;
}

/** The database was away: nothing of the message is settled, and it must be taken again. */
export class NotYet extends Error {
  constructor(cause: unknown) {
    super('The message could not be stored yet.', { cause });
    this.name = 'NotYet';
  }
}

/**
 * Stores the strokes of one message and answers what its sender is told: `{"results"}` as over HTTP, or a problem.
 * It answers after the commit; throws `NotYet` where the database could not do it.
 */
export async function takeMessage(
  parts: MessageParts,
  loggerId: string,
  payload: Buffer,
  onFailure: (error: unknown) => void,
): Promise<Buffer> {
  let envelope: Envelope | null = null;
  try {
    envelope = readEnvelope(payload);
    const sender = await senderOfMessage(parts.database, loggerId, envelope.token, parts.trustTopic);
    if (envelope.strokes === undefined) throw invalidField('/strokes', 'Is missing.');
    const results = await sendStrokes(
      { store: parts.store, pool: inScope(parts.database, rowsOfCaller(sender)).pool },
      sender,
      envelope.strokes,
    );
    return writeResult({ ...idOf(envelope), results }, formOf(payload));
  } catch (error) {
    const problem = problemOf(error);
    if (problem.problem === 'unavailable') throw new NotYet(error);
    if (problem.status >= 500) onFailure(error);
    return writeResult({ ...idOf(envelope), problem: problem.body }, formOf(payload));
  }
}

const idOf = (envelope: Envelope | null) => (envelope?.id == null ? {} : { id: envelope.id });
