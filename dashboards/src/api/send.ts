/** A question to the service, or an order; rejects where there is no network. */
export function send(path: string, options: RequestInit = {}): Promise<Response> {
  const headers = { accept: 'application/json', ...options.headers };
  return fetch(`/api/v1${path}`, { credentials: 'same-origin', ...options, headers });
}
