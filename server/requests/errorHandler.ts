import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify';
import { DecodeError } from '../../ingest/decodeError.ts';
import { codeOf, IS_GONE } from '../../ingest/errorCode.ts';
import { isUnavailable } from '../../ingest/unavailable.ts';
import { notFound, ProblemError, type ProblemName, SECONDS_UNTIL_RETRY } from '../problems.ts';
import { InvalidInput } from './validation.ts';

/** Turns whatever was thrown into an RFC 9457 answer. What nobody foresaw goes to the log, and says nothing. */
export function answerProblem(error: unknown, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  const problem = problemOf(error);
  if (problem.status >= 500) request.log.error({ err: error }, 'a request failed');
  return sendProblem(reply, problem);
}

export function sendProblem(reply: FastifyReply, problem: ProblemError): FastifyReply {
  reply.server.metrics?.problems.inc({ problem: problem.problem });
  return reply
    .code(problem.status)
    .headers({
      ...(problem.problem === 'unavailable' ? { 'retry-after': SECONDS_UNTIL_RETRY } : {}),
      ...problem.headers,
      'cache-control': 'no-store',
    })
    .type('application/problem+json')
    .serializer((body: unknown) => JSON.stringify(body))
    .send(problem.body);
}

/** What a client is told of whatever was thrown. */
export function problemOf(error: unknown): ProblemError {
  if (error instanceof InvalidInput) return placed(error);
  if (error instanceof ProblemError) return error;
  if (error instanceof DecodeError)
    return new ProblemError('invalid-field', error.message, { errors: error.faults, cause: error });
  if (!(error instanceof Error)) return internal();
  const code = codeOf(error);
  if (code === 'FST_ERR_HANDLER_TIMEOUT') return unavailable(error);
  // Errors of Fastify carry it; it is checked before use.
  const { statusCode } = error as Partial<FastifyError>;
  return fromDatabase(code, error) ?? fromFastify(statusCode, code, error) ?? internal();
}

/** An id in the address that cannot be one names nothing; a query or a body is at fault by its fields. */
function placed(error: InvalidInput): ProblemError {
  const { validationContext } = error as InvalidInput & Partial<FastifyError>;
  return validationContext === 'params' ? notFound('thing') : error;
}

function internal(): ProblemError {
  return new ProblemError('internal', 'The fault is ours and has been logged.');
}

/** Codes of appendix A of the Postgres manual. */
function fromDatabase(code: string, error: Error): ProblemError | null {
  if (/^22[0-9A-Z]{3}$/.test(code))
    return new ProblemError('invalid-field', 'A value is beyond what can be stored.', { cause: error });
  if (code === IS_GONE) return notFound('such thing any more');
  if (code === '23505')
    return new ProblemError('conflict', 'Another request made the same thing.', { cause: error });
  return isUnavailable(error) ? unavailable(error) : null;
}

function unavailable(cause: Error): ProblemError {
  return new ProblemError('unavailable', 'The database cannot do this for a moment. Try again.', { cause });
}

const BY_STATUS: Readonly<Record<number, ProblemName>> = {
  401: 'not-signed-in',
  // Of files alone, for a path that leads out of their folder: there is nothing.
  403: 'not-found',
  404: 'not-found',
  405: 'method-not-allowed',
  408: 'request-timeout',
  409: 'conflict',
  413: 'body-too-large',
  414: 'address-too-long',
  415: 'unsupported-media-type',
  422: 'invalid-field',
  429: 'too-many-requests',
};

/** What the framework says for itself is for programmers. */
const IN_OUR_WORDS: Readonly<Record<string, string>> = {
  FST_ERR_BAD_URL: 'The address cannot be read: what follows a % in it is no character of UTF-8.',
  FST_ERR_CTP_INVALID_JSON_BODY: 'The body is not JSON, or has a name in it that is not taken.',
  FST_ERR_CTP_INVALID_MEDIA_TYPE: 'What the Content-Type names is not taken at this address.',
};

function fromFastify(status: number | undefined, code: string, error: Error): ProblemError | null {
  if (status === undefined || status < 400 || status > 499) return null;
  const problem = BY_STATUS[status] ?? 'malformed-request';
  if (problem === 'not-found') return new ProblemError(problem, 'There is nothing at this address.');
  return new ProblemError(problem, IN_OUR_WORDS[code] ?? error.message);
}
