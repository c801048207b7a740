import { once } from 'node:events';
import { get, type IncomingHttpHeaders } from 'node:http';
import { text } from 'node:stream/consumers';

export interface OpenedPage {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly html: string;
  /** By question: the answers that came along with it. */
  readonly answers: ReadonlyMap<string, unknown>;
}

/** Asks for a page as a browser does that follows a link; Node's own `fetch` says of itself that it is no visit. */
export async function openPage(
  url: string,
  path: string,
  { session, ...headers }: Record<string, string | undefined> = {},
): Promise<OpenedPage> {
  const cookie = session === undefined ? {} : { cookie: `session=${session}` };
  const asked = get(url + path, { headers: { 'sec-fetch-mode': 'navigate', ...cookie, ...headers } });
  const [response] = await once(asked, 'response');
  const html = await text(response);
  return { status: response.statusCode, headers: response.headers, html, answers: answersIn(html) };
}

const ENTITIES: Readonly<Record<string, string>> = { '&quot;': '"', '&amp;': '&', '&lt;': '<' };

function answersIn(html: string): ReadonlyMap<string, unknown> {
  const [, value] = /<data id="answers" hidden value="([^"]*)">/.exec(html) ?? [];
  return new Map(JSON.parse((value ?? '[]').replaceAll(/&\w+;/g, (entity) => ENTITIES[entity] ?? entity)));
}
