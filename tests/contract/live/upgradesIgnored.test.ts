import { once } from 'node:events';
import { connect, type Socket } from 'node:net';
import { expect, test } from 'vitest';
import { serviceOfTests } from '../../support/serviceOfTests.ts';

const service = serviceOfTests({ worker: false });

/** As clients of HTTP/2 offer it on a plain connection (RFC 7540, section 3.2). */
const OFFER = 'Connection: Upgrade, HTTP2-Settings\r\nUpgrade: h2c\r\nHTTP2-Settings: AAMAAABkAAQAAP__\r\n';

async function opened(): Promise<Socket> {
  const { hostname, port } = new URL(service.url);
  const socket = connect(Number(port), hostname);
  await once(socket, 'connect');
  return socket;
}

/** The status and the body of the next answer on a connection, whose end its length tells. */
async function answerOn(socket: Socket): Promise<{ status: number; body: string }> {
  let said = '';
  for (;;) {
    const [head, ...rest] = said.split('\r\n\r\n');
    const length = Number(/^content-length: (\d+)/im.exec(head)?.[1] ?? Number.NaN);
    const body = rest.join('\r\n\r\n');
    if (body.length >= length) return { status: Number(head.split(' ')[1]), body };
    const [part] = await once(socket, 'data');
    said += String(part);
  }
}

test('an offer of HTTP/2 is ignored, and the connection goes on', async () => {
  const socket = await opened();
  socket.write(`GET /healthz HTTP/1.1\r\nHost: slideload\r\n${OFFER}\r\n`);
  expect((await answerOn(socket)).status).toBe(200);
  socket.write('GET /api/v1/session HTTP/1.1\r\nHost: slideload\r\n\r\n');
  const second = await answerOn(socket);
  expect([second.status, JSON.parse(second.body).type]).toEqual([401, '/problems/not-signed-in']);
  socket.destroy();
});

test('the body of a request with such an offer is read whole, also where it comes in pieces', async () => {
  const socket = await opened();
  const body = JSON.stringify({ email: 'nobody@example.com', password: 'x'.repeat(150) });
  const [first, last] = [body.slice(0, 20), body.slice(20)];
  const head = `POST /api/v1/session HTTP/1.1\r\nHost: slideload\r\n${OFFER}`;
  socket.write(`${head}Content-Type: application/json\r\nContent-Length: ${body.length}\r\n\r\n${first}`);
  socket.write(last);
  const { status, body: said } = await answerOn(socket);
  expect([status, JSON.parse(said).type]).toEqual([401, '/problems/wrong-password']);
  socket.destroy();
});

test('a second offer on one connection is ignored as well, or refused as a socket that is not there', async () => {
  const socket = await opened();
  socket.write(`GET /healthz HTTP/1.1\r\nHost: slideload\r\n${OFFER}\r\n`);
  expect((await answerOn(socket)).status).toBe(200);
  socket.write(`GET /healthz HTTP/1.1\r\nHost: slideload\r\n${OFFER}\r\n`);
  // Node tells the service of the offer before it has left HTTP from 24.9 on; an older one only afterwards.
  expect([200, 404]).toContain((await answerOn(socket)).status);
  socket.destroy();
});
