import type { RouteOptions } from 'fastify';
import { PROBLEMS, type ProblemName } from '../problems.ts';
import { Problem } from '../schemas/common.ts';

/** What a route may answer besides what it names itself, by what it takes: for the OpenAPI document. */
function problemsOf(route: RouteOptions): ProblemName[] {
  const { schema, config } = route;
  const isPublic = config?.access === 'public';
  const writes = !['GET', 'HEAD'].includes(String(route.method));
  const problems: ProblemName[] = ['malformed-request', 'too-many-requests', 'internal', 'unavailable'];
  if (!isPublic) problems.push('not-signed-in');
  if (config?.change !== undefined) problems.push('not-allowed');
  if (writes) problems.push('foreign-origin', 'conflict');
  if (schema?.params !== undefined) problems.push('not-found', 'address-too-long');
  if (writes || schema?.querystring !== undefined) problems.push('invalid-field');
  // Also where no body is asked for: one that is sent is read.
  if (writes) problems.push('request-timeout', 'body-too-large', 'unsupported-media-type');
  if (route.method === 'POST' && !isPublic) problems.push('idempotency-key-reused');
  return [...problems, ...(config?.problems ?? [])];
}

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Problems of this route that do not follow from what it takes. */
    problems?: readonly ProblemName[];
  }
}

/** Adds the problem answers to a route's schema; run as a hook on every route of the API. */
export function describeProblems(route: RouteOptions): void {
  if (route.schema === undefined || route.schema.hide === true) return;
  const byStatus = new Map<number, ProblemName[]>();
  for (const name of new Set(problemsOf(route))) {
    const { status } = PROBLEMS[name];
    byStatus.set(status, [...(byStatus.get(status) ?? []), name]);
  }
  const answers = Object.fromEntries(
    [...byStatus].map(([status, names]) => [
      status,
      {
        description: names.map((name) => `\`/problems/${name}\`: ${PROBLEMS[name].title}.`).join(' '),
        content: { 'application/problem+json': { schema: Problem } },
      },
    ]),
  );
  route.schema = { ...route.schema, response: { ...answers, ...Object(route.schema.response) } };
}
