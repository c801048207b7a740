import { words } from '../words.ts';
import { forgetEarly, takeEarly } from './early.ts';
import { takeGiven } from './knownAnswers.ts';
import { send } from './send.ts';
import type { Problem } from './types.ts';

const PAGE_FAULT = -1;

/** Why a call to the service came to nothing, in words that a person can act on. `status` 0: no network; below: our fault. */
export class CallProblem extends Error {
  readonly status: number;
  readonly fields: readonly { pointer: string; detail: string }[];

  /** Whether the same is likely to be answered by itself after a while: no network, or a service that is just starting or has much to do. */
  readonly passes: boolean;

  constructor(status: number, message: string, fields: CallProblem['fields'] = [], isBusy = false) {
    super(message);
    this.name = 'CallProblem';
    this.status = status;
    this.fields = fields;
    this.passes = isBusy || status === 0 || (status >= 502 && status <= 504);
  }
}

let onSessionLost: () => void = () => {};
/** How often somebody signed in or out in this tab: what was asked before says nothing of the session that is now. */
let sessions = 0;

/** Tells afterwards whether nobody has signed in or out in this tab since. */
export function untilSessionChanges(): () => boolean {
  const askedIn = sessions;
  return () => askedIn === sessions;
}

/** Names what to do when the service no longer knows who is calling. */
export function whenSessionLost(then: () => void): void {
  onSessionLost = then;
}

async function problemOf(response: Response, isQuestion: boolean): Promise<CallProblem> {
  const said = response.headers.get('content-type')?.includes('json')
    ? // The service answers every error in this shape; whatever is missing is checked below.
      ((await response.json().catch(() => null)) as Partial<Problem> | null)
    : null;
  const wait = Number(response.headers.get('retry-after'));
  // Whoever asks a question did nothing too often: others ask as well.
  if (response.status === 429 && isQuestion) return new CallProblem(429, words.problems.busy, [], true);
  if (response.status === 429) return new CallProblem(429, words.problems.tooMany(wait));
  if (response.status >= 500)
    return new CallProblem(response.status, isQuestion ? words.problems.unanswered : words.problems.service);
  return new CallProblem(response.status, withoutPointer(said), said?.errors ?? []);
}

/** Programs are told where in the body a fault is; people are told beside the field, or what it is. */
function withoutPointer(said: Partial<Problem> | null): string {
  const first = said?.errors?.[0];
  const detail = said?.detail ?? words.problems.refused;
  return first !== undefined && detail === `${first.pointer}: ${first.detail}` ? first.detail : detail;
}

interface Call {
  readonly method?: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  readonly body?: unknown;
  /** In place of a body: a file, in UTF-8. */
  readonly csv?: Blob;
  /** The same key twice creates once: a form keeps its key until it was answered. */
  readonly idempotencyKey?: string;
  /** Of an answer that is no JSON: it comes as its text. */
  readonly accept?: string;
  /** A wrong password is an answer, not a lost session. */
  readonly keepSession?: boolean;
}

/** Calls the service. The answer has the shape that the service's own schema gives it. */
export async function call<Answer>(path: string, options: Call = {}): Promise<Answer> {
  const headers: Record<string, string> = {};
  if (options.accept !== undefined) headers.accept = options.accept;
  if (options.body !== undefined) headers['content-type'] = 'application/json';
  if (options.csv !== undefined) headers['content-type'] = 'text/csv';
  if (options.idempotencyKey !== undefined) headers['idempotency-key'] = options.idempotencyKey;
  const { method = 'GET' } = options;
  const body = options.csv ?? (options.body === undefined ? undefined : JSON.stringify(options.body));
  if (options.keepSession === true) forgetEarly();
  const isSameSession = untilSessionChanges();
  const isFile = options.csv !== undefined || options.accept !== undefined;
  const mayBeThere = method === 'GET' && options.accept === undefined;
  const given = mayBeThere ? takeGiven(path) : null;
  // The service had it from its own route, which gave it its shape.
  if (given !== null) return given.value as Answer;
  const early = mayBeThere ? takeEarly(path) : undefined;
  const response = await (early ?? send(path, { method, headers, body, isFile })).catch(noNetwork);
  if (response.status === 401 && options.keepSession !== true && isSameSession()) onSessionLost();
  if (response.ok && options.keepSession === true) sessions++;
  if (!response.ok) throw await problemOf(response, mayBeThere);
  // Types and answers come from the same schema, checked by the service before it answers.
  if (response.status === 204) return null as Answer;
  // A weak line may break in the middle of an answer.
  const text = await response.text().catch(noNetwork);
  return (options.accept === undefined ? JSON.parse(text) : text) as Answer;
}

function noNetwork(): never {
  throw new CallProblem(0, words.problems.network);
}

/** A key for one creation. `crypto.randomUUID` is missing on plain http in a local network, this is not. */
export function newKey(): string {
  return Array.from(crypto.getRandomValues(new Uint32Array(4)), (n) => n.toString(36)).join('-');
}

/** Whatever was thrown, as a problem that can be shown. */
export function asProblem(error: unknown): CallProblem {
  return error instanceof CallProblem ? error : new CallProblem(PAGE_FAULT, words.problems.page);
}
