/** The service's API as a person's or a logger's program would call it: what the pages' tests are set up with. */
export interface Api {
  readonly url: string;
  readonly token: string;
}

export async function ask<Answer>(
  api: Api,
  method: 'GET' | 'POST' | 'PATCH',
  path: string,
  body?: unknown,
): Promise<Answer> {
  const response = await fetch(`${api.url}/api/v1${path}`, {
    method,
    headers: { authorization: `Bearer ${api.token}`, 'content-type': 'application/json' },
    body: body === undefined ? undefined : JSON.stringify(body),
  });
  if (!response.ok) throw new Error(`${method} ${path}: ${response.status} ${await response.text()}`);
  // Tests read only what the contract names; a wrong shape fails the test that reads it.
  return (await response.json()) as Answer;
}

/** Signs in and answers how to call as that person. */
export async function apiOf(url: string, email: string, password: string): Promise<Api> {
  const { token } = await ask<{ token: string }>({ url, token: '' }, 'POST', '/session', { email, password });
  return { url, token };
}
