import type { FastifyRequest } from 'fastify';
import { ProblemError } from '../../problems.ts';
import type { Caller } from '../scopes/caller.ts';
import { changesSomething } from '../signIn/sameOrigin.ts';

/** A script never does what only its person may, and changes nothing where its token is for reading. */
export function holdScript(request: FastifyRequest, caller: Caller): void {
  if (caller.kind !== 'person' || caller.script === undefined) return;
  if (request.routeOptions.config.byHand === true)
    throw new ProblemError('not-allowed', 'Sign in for this: a token for scripts may not do it.');
  if (changesSomething(request) && !caller.script.mayChange)
    throw new ProblemError('not-allowed', 'This token may only read.');
}
