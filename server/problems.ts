import type { FieldFault } from '../ingest/decodeError.ts';
import type { Problem } from './schemas/common.ts';

/**
 * Every problem that the service answers with (RFC 9457). A test compares this list with the OpenAPI document and
 * with the table in server/README.md. `type` is `/problems/<name>`, where the service explains it in plain text.
 */
export const PROBLEMS = {
  'malformed-request': { status: 400, title: 'The request cannot be read' },
  'not-signed-in': { status: 401, title: 'Sign in first' },
  'wrong-password': { status: 401, title: 'The e-mail address and the password do not fit' },
  'not-allowed': { status: 403, title: 'Your role may not do this' },
  'foreign-origin': { status: 403, title: 'The request comes from a page of another site' },
  'not-found': { status: 404, title: 'There is no such thing' },
  'method-not-allowed': { status: 405, title: 'This address does not take this method' },
  'request-timeout': { status: 408, title: 'The request came too slowly' },
  conflict: { status: 409, title: 'The request collides with another' },
  'samples-removed': { status: 410, title: 'The samples are no longer kept' },
  'body-too-large': { status: 413, title: 'The body is too large' },
  'address-too-long': { status: 414, title: 'The address is too long' },
  'unsupported-media-type': { status: 415, title: 'The body has a form that is not taken here' },
  'expectation-failed': { status: 417, title: 'The expectation cannot be met' },
  'invalid-field': { status: 422, title: 'A field is at fault' },
  'upgrade-required': { status: 426, title: 'This address takes WebSockets only' },
  'headers-too-large': { status: 431, title: 'The headers are too large' },
  'idempotency-key-reused': { status: 422, title: 'The Idempotency-Key was used for another request' },
  'too-many-attempts': { status: 429, title: 'Too many wrong passwords' },
  'too-many-requests': { status: 429, title: 'Too many requests' },
  internal: { status: 500, title: 'The service failed' },
  unavailable: { status: 503, title: 'The service cannot answer for a moment' },
} as const satisfies Record<string, { status: number; title: string }>;

export type ProblemName = keyof typeof PROBLEMS;

/** What an `unavailable` says in `Retry-After`. */
export const SECONDS_UNTIL_RETRY = '5';

/** The body of an answer, or of one rejected stroke. */
export function problemBody(name: ProblemName, detail: string, errors: readonly FieldFault[] = []): Problem {
  const { status, title } = PROBLEMS[name];
  const body: Problem = { type: `/problems/${name}`, title, status, detail };
  return errors.length === 0 ? body : { ...body, errors: [...errors] };
}

/** Thrown anywhere below a route; the one error handler turns it into an answer. */
export class ProblemError extends Error {
  readonly problem: ProblemName;
  readonly errors: readonly FieldFault[];
  readonly headers: Readonly<Record<string, string>>;

  constructor(
    problem: ProblemName,
    detail: string,
    more: {
      errors?: readonly FieldFault[];
      headers?: Readonly<Record<string, string>>;
      cause?: unknown;
    } = {},
  ) {
    super(detail, { cause: more.cause });
    this.name = 'ProblemError';
    this.problem = problem;
    this.errors = more.errors ?? [];
    this.headers = more.headers ?? {};
  }

  get status(): number {
    return PROBLEMS[this.problem].status;
  }

  /** As it is told, in an answer or in a message. */
  get body(): Problem {
    return problemBody(this.problem, this.message, this.errors);
  }
}

/** `what` without an article: `coach`. Also said of what exists and belongs to somebody else. */
export function notFound(what: string): ProblemError {
  return new ProblemError('not-found', `There is no ${what} at this address.`);
}

/** One field at fault; `pointer` such as `/sides/0`. */
export function invalidField(pointer: string, detail: string): ProblemError {
  return new ProblemError('invalid-field', detail, { errors: [{ pointer, detail }] });
}

const AGAIN_AFTER_S = '10';

/** Of whoever sends more at once than can be taken. */
export function tooMuchAtOnce(): ProblemError {
  return new ProblemError('too-many-requests', 'This is too much at once. Send again after the others.', {
    headers: { 'retry-after': AGAIN_AFTER_S },
  });
}

/** Of a plain request where a WebSocket is opened; names what to upgrade to (RFC 9110, section 15.5.22). */
export function upgradeRequired(): ProblemError {
  return new ProblemError('upgrade-required', 'Open a WebSocket at this address.', {
    headers: { upgrade: 'websocket', connection: 'upgrade' },
  });
}

export function notSignedIn(): ProblemError {
  return new ProblemError('not-signed-in', 'Sign in, or send a token that is valid here.', {
    headers: { 'www-authenticate': 'Bearer' },
  });
}

/** Said alike of a wrong password and of an address that nobody has. */
export function wrongPassword(): ProblemError {
  return new ProblemError('wrong-password', 'Check both and try again.', {
    headers: { 'www-authenticate': 'Bearer' },
  });
}
