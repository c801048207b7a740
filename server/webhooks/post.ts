import { Resolver } from 'node:dns/promises';
import { type ClientRequest, request as requestHttp } from 'node:http';
import { request as requestHttps } from 'node:https';
import { codeOf } from '../../ingest/errorCode.ts';
import { hostOf, lookUpPublic, NotPublicError, refuseLiteral } from './publicAddress.ts';

/** From the look-up to the head of the answer. */
const ANSWER_WITHIN_MS = 10_000;
/** It asks name servers by itself: the system's own look-up takes threads that passwords are hashed in as well. */
const NAMES = new Resolver({ timeout: 2000, tries: 2 });

/** What came of one attempt: a status, or why there was none, in words for whoever made the webhook. */
export type Attempt = { readonly status: number } | { readonly error: string };

interface PostOptions {
  /** Also to addresses that are not public, and without TLS. */
  readonly toPrivate: boolean;
  /** Ends the attempt. */
  readonly cut: AbortSignal;
}

/** Posts a text, and looks at the status of the answer alone. No redirect is followed. */
export async function post(
  address: string,
  headers: Readonly<Record<string, string>>,
  body: string,
  { toPrivate, cut }: PostOptions,
): Promise<Attempt> {
  const url = new URL(address);
  const signal = AbortSignal.any([AbortSignal.timeout(ANSWER_WITHIN_MS), cut]);
  try {
    if (!toPrivate) {
      if (url.protocol !== 'https:') throw new NotPublicError(url.host);
      refuseLiteral(hostOf(url));
    }
    const begin = url.protocol === 'https:' ? requestHttps : requestHttp;
    const request = begin(url, {
      method: 'POST',
      headers: {
        ...headers,
        'content-type': 'application/json',
        'content-length': Buffer.byteLength(body),
        'user-agent': 'Slideload',
      },
      // A connection of its own, which is gone afterwards.
      agent: false,
      signal,
      ...(toPrivate ? {} : { lookup: lookUpPublic(NAMES) }),
    });
    return { status: await statusOf(request, body) };
  } catch (error) {
    return { error: signal.aborted ? 'It did not answer within 10 s.' : reasonOf(error) };
  }
}

function statusOf(request: ClientRequest, body: string): Promise<number> {
  return new Promise((resolve, reject) => {
    request.on('error', reject);
    request.on('response', (response) => {
      resolve(response.statusCode ?? 0);
      // What else it says is nothing to us: the connection is closed on it.
      response.destroy();
    });
    request.end(body);
  });
}

/** Codes are Node's own and tell nothing of what was found behind the address. */
function reasonOf(error: unknown): string {
  if (error instanceof NotPublicError) return 'It is no https address of the public Internet.';
  return `It could not be reached (${codeOf(error) || 'unknown'}).`;
}
