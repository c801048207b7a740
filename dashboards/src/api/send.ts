/** A line that stalls is given up after so long: a browser would wait for minutes, and a person with it. */
const LONGEST_WAIT_MS = 60_000;

interface Sent extends RequestInit {
  /** A whole file goes one way or the other: it may take as long as it does. */
  readonly isFile?: boolean;
}

/** A question to the service, or an order; rejects where there is no network, or one that stalls. */
export function send(path: string, { isFile = false, ...options }: Sent = {}): Promise<Response> {
  const headers = { accept: 'application/json', ...options.headers };
  const stalls = new AbortController();
  // Also while the answer is being read; once that is there it ends nothing.
  if (!isFile) setTimeout(() => stalls.abort(), LONGEST_WAIT_MS);
  const { signal } = stalls;
  return fetch(`/api/v1${path}`, { credentials: 'same-origin', ...options, headers, signal });
}
