import type { Socket } from 'node:net';
import type { Duplex } from 'node:stream';
import type { ConnectionError } from 'fastify';
import { PROBLEMS, type ProblemName, problemBody } from '../problems.ts';

/** So long a client may go on sending before it is cut off: cut off at once it would not get to read the answer. */
const LINGER_MS = 1000;

/**
 * Answers what HTTP itself does not allow, and headers that come too slowly, as a problem like any other. There is no
 * request yet: it is written to the connection, which ends.
 */
export function answerBrokenRequest({ code }: ConnectionError, socket: Socket): void {
  // Told again of each further piece of what was answered already.
  if (code === 'ECONNRESET' || socket.destroyed || socket.writableEnded) return;
  if (!socket.writable) {
    socket.destroy();
    return;
  }
  const [name, detail] = saidOf(code);
  endWithProblem(socket, name, detail);
}

/** Writes a problem to a connection that has no other answer, and ends it. */
export function endWithProblem(
  socket: Duplex,
  name: ProblemName,
  detail: string,
  headers: readonly string[] = [],
): void {
  socket.end(answerOf(name, detail, headers));
  const cutting = setTimeout(() => socket.destroy(), LINGER_MS);
  socket.once('close', () => clearTimeout(cutting));
}

function answerOf(name: ProblemName, detail: string, headers: readonly string[]): string {
  const { status, title } = PROBLEMS[name];
  const body = JSON.stringify(problemBody(name, detail));
  const head = [
    `HTTP/1.1 ${status} ${title}`,
    'content-type: application/problem+json',
    `content-length: ${Buffer.byteLength(body)}`,
    'connection: close',
    ...headers,
  ];
  return `${head.join('\r\n')}\r\n\r\n${body}`;
}

/** By the codes of Node's parser. */
function saidOf(code: string): [ProblemName, string] {
  if (code === 'ERR_HTTP_REQUEST_TIMEOUT') return ['request-timeout', 'The request was not whole in time.'];
  if (code === 'HPE_HEADER_OVERFLOW') return ['headers-too-large', 'The headers are larger than is taken.'];
  return ['malformed-request', 'This is not HTTP.'];
}
