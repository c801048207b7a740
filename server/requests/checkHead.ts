import type { IncomingMessage, ServerResponse } from 'node:http';
import fp from 'fastify-plugin';
import type { App } from '../appTypes.ts';
import { PROBLEMS, ProblemError, problemBody } from '../problems.ts';

/** What Node's own server would answer without a word, were it not told to leave it to us: a problem like any other. */
export const checkHead = fp(async (app: App) => {
  app.addHook('onRequest', async ({ raw }) => {
    if (raw.httpVersion === '1.1' && raw.headers.host === undefined)
      throw new ProblemError('malformed-request', 'A request of HTTP/1.1 names the Host that it is for.', {
        headers: { connection: 'close' },
      });
  });
  app.server.on('checkExpectation', refuseExpectation);
});

/** `100-continue` is met by Node itself; no other expectation is known. */
function refuseExpectation(_request: IncomingMessage, response: ServerResponse): void {
  const body = JSON.stringify(problemBody('expectation-failed', 'Expect may say 100-continue alone.'));
  response
    .writeHead(PROBLEMS['expectation-failed'].status, {
      'content-type': 'application/problem+json',
      'content-length': Buffer.byteLength(body),
      // The body may or may not come: nothing can be read after this.
      connection: 'close',
    })
    .end(body);
}
