import { once } from 'node:events';
import { createServer } from 'node:http';
import { problemBody, SECONDS_UNTIL_RETRY } from './problems.ts';

/**
 * Answers 503 to every request at the address that the service will have, while it waits for its database: whoever asks
 * `/readyz` is told that it is not ready, rather than that nobody is there. A port that cannot be taken is told to `say`.
 * Answers, once it listens, how to end it before the service itself does. Of port 0 nobody knows the number yet: nothing is
 * answered.
 */
export async function answerNotYetReady(
  { port, host }: { readonly port: number; readonly host: string },
  say: (line: string) => void,
): Promise<() => Promise<void>> {
  if (port === 0) return async () => undefined;
  const body = JSON.stringify(
    problemBody('unavailable', 'The service is waiting for its database. Try again.'),
  );
  const server = createServer((_, response) => {
    response.writeHead(503, {
      'content-type': 'application/problem+json',
      'cache-control': 'no-store',
      'retry-after': SECONDS_UNTIL_RETRY,
    });
    response.end(body);
  });
  server.on('error', (error) => say(`Nothing is answered at ${host}:${port} meanwhile: ${error.message}.`));
  await new Promise<void>((resolve) => {
    server.once('error', () => resolve());
    server.listen(port, host, resolve);
  });
  return async () => {
    if (!server.listening) return;
    const closed = once(server, 'close');
    server.close();
    server.closeAllConnections();
    await closed;
  };
}
