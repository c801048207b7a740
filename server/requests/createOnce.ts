import { createHash } from 'node:crypto';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { ExpressionBuilder, Transaction } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { type Caller, callerId, callerOf, homeAccountOf } from '../access/scopes/caller.ts';
import { inTransaction } from '../database/inTransaction.ts';
import { invalidField, ProblemError } from '../problems.ts';
import { hashKey, openAnswer, sealAnswer } from './sealedAnswer.ts';

export const LONGEST_KEY = 255;
export const KEPT_FOR_MS = 24 * 3_600_000;
/** The header of an answer that was given before. */
export const REPLAYED = 'idempotency-replayed';

/**
 * Creates in one transaction. With an `Idempotency-Key` header, the same key from the same caller within 24 hours gets
 * the first answer again and creates nothing, whatever the body, also when both are sent at once; a header says so.
 * The key at another address is refused: the answer would be about another kind of thing.
 */
export function createOnce<Answer>(
  reply: FastifyReply,
  create: (trx: Transaction<Tables>) => Promise<Answer>,
): Promise<Answer> {
  const { request } = reply;
  const key = keyOf(request);
  if (key === null) return inTransaction(request.db, create);
  const caller = callerOf(request);
  return inTransaction(request.db, async (trx) => {
    const earlier = await claim(trx, caller, key, addressHash(request));
    if (earlier !== null) {
      reply.header(REPLAYED, 'true');
      // Sealed by this very function after the same route's `create`.
      return openAnswer(earlier, key) as Answer;
    }
    // What was let through for the sake of an answer that has run out since.
    if (request.validationError !== undefined) throw request.validationError;
    const answer = await create(trx);
    await trx
      .updateTable('idempotency_keys')
      .set({ answer: sealAnswer(answer, key) })
      .where(isOf(caller, key))
      .execute();
    return answer;
  });
}

/**
 * Refuses what the schemas of a route found wrong: for one that leaves it to whoever comes after them
 * (`attachValidation`). A body at fault goes on where its key has an answer, as that is given whatever the body.
 */
export async function refuseInvalid(request: FastifyRequest): Promise<void> {
  const { validationError } = request;
  if (validationError === undefined) return;
  if (validationError.validationContext !== 'body' || !(await hasAnswer(request))) throw validationError;
}

async function hasAnswer(request: FastifyRequest): Promise<boolean> {
  const key = keyOf(request);
  if (key === null) return false;
  const first = await request.db
    .selectFrom('idempotency_keys')
    .select('key_hash')
    .where(isOf(callerOf(request), key))
    .where('request_hash', '=', addressHash(request))
    .where('answer', 'is not', null)
    .where('created_at', '>=', new Date(Date.now() - KEPT_FOR_MS))
    .executeTakeFirst();
  return first !== undefined;
}

function keyOf(request: FastifyRequest): string | null {
  const key = request.headers['idempotency-key'];
  if (key === undefined) return null;
  if (Array.isArray(key) || key.length === 0 || key.length > LONGEST_KEY)
    throw invalidField('/headers/idempotency-key', `Must be 1 to ${LONGEST_KEY} characters.`);
  return key;
}

/**
 * Claims the key; null when it is ours, else the first answer. A second request with the same key waits at the insert
 * until the first one's transaction ends: then it sees the answer, or, had that failed, claims the key itself.
 */
async function claim(
  trx: Transaction<Tables>,
  caller: Caller,
  key: string,
  hash: Buffer,
): Promise<Buffer | null> {
  const now = new Date();
  const claimed = await trx
    .insertInto('idempotency_keys')
    .values({ ...namesOf(caller, key), request_hash: hash, created_at: now })
    .onConflict((conflict) =>
      conflict
        .columns(['account_id', 'caller_id', 'key_hash'])
        .doUpdateSet({ request_hash: hash, answer: null, created_at: now })
        .where('idempotency_keys.created_at', '<', new Date(now.getTime() - KEPT_FOR_MS)),
    )
    .returning('key_hash')
    .executeTakeFirst();
  if (claimed !== undefined) return null;
  const first = await trx
    .selectFrom('idempotency_keys')
    .select(['request_hash', 'answer'])
    .where(isOf(caller, key))
    .executeTakeFirstOrThrow();
  if (!first.request_hash.equals(hash))
    throw new ProblemError(
      'idempotency-key-reused',
      'The key was used at another address. Take a new one for each request.',
    );
  if (first.answer === null) throw new ProblemError('conflict', 'The first request is still under way.');
  return first.answer;
}

/** What a key is kept under. */
function namesOf(caller: Caller, key: string) {
  return { account_id: homeAccountOf(caller), caller_id: callerId(caller), key_hash: hashKey(key) };
}

function isOf(caller: Caller, key: string) {
  return ({ and }: ExpressionBuilder<Tables, 'idempotency_keys'>) => and(namesOf(caller, key));
}

/** What must be the same for the answer to be the same. Ids in it may come in capitals. */
function addressHash(request: FastifyRequest): Buffer {
  const path = request.url.split('?', 1)[0].toLowerCase();
  return createHash('sha256')
    .update(JSON.stringify([request.method, path]))
    .digest();
}
