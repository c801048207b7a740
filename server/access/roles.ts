import type { FastifyRequest } from 'fastify';
import type { Kysely } from 'kysely';
import { validate as isUuid } from 'uuid';
import type { Tables } from '../../migrations/tables.ts';
import { notFound, ProblemError } from '../problems.ts';

/** Things that a route's address may name, and what they are called. */
const SUBJECTS = {
  coaches: 'coach',
  rooms: 'room',
  loggers: 'logger',
  strokes: 'stroke',
  services: 'service',
  warnings: 'warning',
} as const;
type SubjectTable = keyof typeof SUBJECTS;

/**
 * Holds a caller to the roles that a route names. What the caller cannot see is 404 whatever its role; 403 is for
 * things that it can see and may not change.
 */
export async function holdToRole(db: Kysely<Tables>, request: FastifyRequest): Promise<void> {
  const { change } = request.routeOptions.config;
  const { caller } = request;
  if (change === undefined || caller?.kind !== 'person' || change.includes(caller.role)) return;
  const subject = subjectOf(request);
  if (subject !== null && !(await exists(db, caller.accountId, subject)))
    throw notFound(SUBJECTS[subject.table]);
  throw notAllowed(caller.role);
}

export function notAllowed(role: string): ProblemError {
  return new ProblemError('not-allowed', `The role ${role} may see this and may not change it.`);
}

function subjectOf(request: FastifyRequest): { table: SubjectTable; id: string } | null {
  const [table, id] = request.url.replace(/^\/api\/v1\//, '').split(/[/?]/);
  if (table === undefined || id === undefined || !Object.hasOwn(SUBJECTS, table)) return null;
  // Just checked to be one of the keys.
  return { table: table as SubjectTable, id };
}

async function exists(
  db: Kysely<Tables>,
  accountId: string,
  subject: { table: SubjectTable; id: string },
): Promise<boolean> {
  if (!isUuid(subject.id)) return false;
  const found = await db
    .selectFrom(subject.table)
    .select('id')
    .where('account_id', '=', accountId)
    .where('id', '=', subject.id)
    .executeTakeFirst();
  return found !== undefined;
}
