import type { Socket } from 'node:net';
import type { ConnectionError } from 'fastify';
import { PROBLEMS, type ProblemName, problemBody } from './problems.ts';

/**
 * Answers what HTTP itself does not allow, and headers that come too slowly, as a problem like any other. There is no
 * request yet: it is written to the connection, which ends.
 */
export function answerBrokenRequest({ code }: ConnectionError, socket: Socket): void {
  if (code === 'ECONNRESET' || socket.destroyed) return;
  if (socket.writable) socket.write(answerOf(code));
  socket.destroy();
}

function answerOf(code: string): string {
  const [name, detail] = saidOf(code);
  const { status, title } = PROBLEMS[name];
  const body = JSON.stringify(problemBody(name, detail));
  const head = [
    `HTTP/1.1 ${status} ${title}`,
    'content-type: application/problem+json',
    `content-length: ${Buffer.byteLength(body)}`,
    'connection: close',
  ];
  return `${head.join('\r\n')}\r\n\r\n${body}`;
}

/** By the codes of Node's parser. */
function saidOf(code: string): [ProblemName, string] {
  if (code === 'ERR_HTTP_REQUEST_TIMEOUT') return ['request-timeout', 'The request was not whole in time.'];
  if (code === 'HPE_HEADER_OVERFLOW') return ['headers-too-large', 'The headers are larger than is taken.'];
  return ['malformed-request', 'This is not HTTP.'];
}
