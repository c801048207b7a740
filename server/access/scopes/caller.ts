import type { FastifyRequest } from 'fastify';
import { notSignedIn } from '../../problems.ts';
import type { Role } from '../../schemas/session.ts';
import type { Scope } from './scope.ts';

/** Who sends a request: a person who signed in, or a logger with its own token. */
export type Caller = PersonCaller | LoggerCaller;

export type PersonCaller = Scope;
export interface LoggerCaller {
  readonly kind: 'logger';
  readonly accountId: string;
  readonly loggerId: string;
  readonly coachId: string;
}

declare module 'fastify' {
  interface FastifyRequest {
    /** Null before authentication and on public routes. */
    caller: Caller | null;
  }
  interface FastifyContextConfig {
    /** Who may call: anyone, a person (when absent), or a person or logger that sends strokes. */
    access?: 'public' | 'person' | 'sender';
    /** The route is about no single thing: it needs every coach that the caller visits. */
    visits?: boolean;
    /** Only a person that signed in may: no token that it gave to a script. */
    byHand?: boolean;
    /** The route is about a thing that was deleted, and looks for it itself. */
    ofDeleted?: boolean;
    /** The roles for which there is such a thing at all; all of them when absent. Others get 404. */
    see?: readonly Role[];
    /** The roles that may; all of them when absent. Others get 403 on what they can see and 404 on the rest. */
    change?: readonly Role[];
  }
}

/** Whoever sent the request. Throws the 401 problem on a public route. */
export function callerOf(request: FastifyRequest): Caller {
  if (request.caller === null) throw notSignedIn();
  return request.caller;
}

/** The person who sent the request, in its scope there. Throws the 401 problem for a logger. */
export function personOf(request: FastifyRequest): PersonCaller {
  const caller = callerOf(request);
  if (caller.kind !== 'person') throw notSignedIn();
  return caller;
}

/** The id under which a caller's keys are unique. */
export function callerId(caller: Caller): string {
  return caller.kind === 'person' ? caller.personId : caller.loggerId;
}

/** The account that the caller itself belongs to, wherever its request goes. */
export function homeAccountOf(caller: Caller): string {
  return caller.kind === 'person' && caller.visit !== undefined
    ? caller.visit.homeAccountId
    : caller.accountId;
}

/** Roles that see and change people and grants. */
export const DEALER = ['dealer'] as const satisfies readonly Role[];

/** Roles that change coaches, rooms, loggers and strokes. Owners read, acknowledge and record services. */
export const STAFF = ['dealer', 'technician'] as const satisfies readonly Role[];
