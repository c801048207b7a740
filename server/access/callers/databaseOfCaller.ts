import type { FastifyRequest } from 'fastify';
import type { Kysely } from 'kysely';
import type { Connections } from '../../../ingest/queries.ts';
import type { Tables } from '../../../migrations/tables.ts';
import type { App } from '../../appTypes.ts';
import { type DatabaseInScope, inScope } from '../../database/openDatabase.ts';
import type { RowScope } from '../../database/rowScope.ts';
import type { Caller } from '../scopes/caller.ts';
import { actingIn, rowsOf } from '../scopes/scope.ts';
import { changesSomething } from '../signIn/sameOrigin.ts';

declare module 'fastify' {
  interface FastifyRequest {
    /** The database as far as the caller sees it; on a public route that is nothing. */
    readonly db: Kysely<Tables>;
    /** The same without Kysely, for statements that are written out. */
    readonly pool: Connections;
  }
}

/** Gives every request the database in the scope of its caller: what a query forgets to say, Postgres still holds. */
export function giveDatabase(app: App): void {
  const opened = new WeakMap<Caller, DatabaseInScope>();
  const databaseOf = (request: FastifyRequest): DatabaseInScope => {
    const { caller } = request;
    if (caller === null) return app.database;
    const known = opened.get(caller) ?? inScope(app.database, scopeFor(request, caller));
    opened.set(caller, known);
    return known;
  };
  app.decorateRequest('db', {
    getter: function () {
      return databaseOf(this).db;
    },
  });
  app.decorateRequest('pool', {
    getter: function () {
      return databaseOf(this).pool;
    },
  });
}

/** Who asks is of interest where something changes, and would else only be one more scope to enter. */
function scopeFor(request: FastifyRequest, caller: Caller): RowScope {
  return caller.kind === 'person' && changesSomething(request) ? actingIn(caller) : rowsOfCaller(caller);
}

/** The rows of a person, or the place that a logger sends to. */
export function rowsOfCaller(caller: Caller): RowScope {
  if (caller.kind === 'person') return rowsOf(caller);
  const { accountId, coachId, loggerId } = caller;
  return { senders: [loggerId], visits: [{ accountId, coachId }] };
}
