import { once } from 'node:events';
import { connect } from 'node:net';
import { text } from 'node:stream/consumers';

const PIECE_BYTES = 256 * 1024;

/** As clients do that read nothing before all of a body is written: what comes of it, or the error that writing ended with. */
export async function sendWholeThenRead(
  url: string,
  path: string,
  body: Buffer,
  headers: readonly string[],
): Promise<string> {
  const { hostname, port } = new URL(url);
  const socket = connect(Number(port), hostname);
  const head = [`POST ${path} HTTP/1.1`, `Host: ${hostname}`, 'Content-Type: application/json', ...headers];
  socket.write(`${head.join('\r\n')}\r\n\r\n`);
  for (let from = 0; from < body.length; from += PIECE_BYTES)
    if (!socket.write(body.subarray(from, from + PIECE_BYTES))) await once(socket, 'drain');
  socket.end();
  return text(socket);
}
