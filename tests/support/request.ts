export interface RequestOptions {
  /** Sent as JSON, unless it is text or bytes already. */
  readonly body?: unknown;
  readonly token?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

export interface Answer {
  readonly status: number;
  readonly headers: Headers;
  readonly text: string;
  /** The parsed JSON; null where the answer is none. Tests check its shape themselves. */
  // biome-ignore lint/suspicious/noExplicitAny: a test reads what it asserts, and a wrong shape fails it
  readonly body: any;
}

/** One HTTP request to `/api/v1` + path, or to the path itself when it begins with `/api`, `/healthz` or the like. */
export async function sendRequest(
  url: string,
  method: string,
  path: string,
  { body, token, headers }: RequestOptions = {},
): Promise<Answer> {
  const raw = typeof body === 'string' || body instanceof Uint8Array;
  const sent: Record<string, string> = {};
  if (body !== undefined) sent['content-type'] = 'application/json';
  if (token !== undefined) sent.authorization = `Bearer ${token}`;
  const response = await fetch(addressOf(url, path), {
    method,
    headers: { ...sent, ...headers },
    body: body === undefined ? undefined : raw ? body : JSON.stringify(body),
    redirect: 'manual',
  });
  const text = await response.text();
  const isJson = response.headers.get('content-type')?.includes('json') === true;
  return { status: response.status, headers: response.headers, text, body: isJson ? JSON.parse(text) : null };
}

const OTHER_ROOTS = /^\/($|(api|healthz|readyz|metrics|problems|assets|unsubscribe)\b)/;

function addressOf(url: string, path: string): string {
  return OTHER_ROOTS.test(path) ? url + path : `${url}/api/v1${path}`;
}
