import type { FastifyRequest } from 'fastify';
import type { Database } from '../../database/openDatabase.ts';
import { notFound, ProblemError } from '../../problems.ts';
import type { Role } from '../../schemas/session.ts';
import { personOf } from './caller.ts';
import { SUBJECTS, type SubjectTable, scopeOf, withVisits } from './scope.ts';

/**
 * Finds the scope in which a person's request stands, and holds it to the roles that the route names. What the caller
 * cannot see is 404 whatever its role; 403 is for things that it can see and may not change.
 */
export async function holdToRole(database: Database, request: FastifyRequest): Promise<void> {
  if (request.caller?.kind !== 'person') return;
  const { visits: withAll, ofDeleted, see, change } = request.routeOptions.config;
  const subject = ofDeleted === true ? null : subjectOf(request);
  if (subject !== null) request.caller = await scopeOf(database, request.caller, subject.table, subject.id);
  else if (withAll === true) request.caller = await withVisits(database, request.caller);
  const { role, visits = [] } = personOf(request);
  const may = (roles: readonly Role[]) =>
    [role, ...visits.map((visit) => visit.role)].some((each) => roles.includes(each));
  if (see !== undefined && !may(see)) throw notFound('such thing');
  if (change !== undefined && !may(change)) throw notAllowed(role);
}

function notAllowed(role: string): ProblemError {
  return new ProblemError('not-allowed', `The role ${role} may see this and may not change it.`);
}

/** The thing that the route's address names first: `/api/v1/rooms/:id/trend` is about a room. */
function subjectOf(request: FastifyRequest): { table: SubjectTable; id: string } | null {
  const [, table, name] = /^\/api\/v1\/([a-z]+)\/:(\w+)/.exec(request.routeOptions.url ?? '') ?? [];
  if (table === undefined || name === undefined || !Object.hasOwn(SUBJECTS, table)) return null;
  // Just checked to be one of the keys; the router fills every name of the address.
  const id = (request.params as Record<string, string>)[name] ?? '';
  return { table: table as SubjectTable, id };
}
