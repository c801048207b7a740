import { createServer, type IncomingHttpHeaders, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface Received {
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

/** A program that is told of news: it keeps what it is sent and answers as it is set to. */
export interface WebhookReceiver {
  readonly url: string;
  readonly received: Received[];
  /** What it answers with; `nothing` leaves the sender waiting. */
  answer: number | 'nothing';
  /** Resolves once it has been sent so many requests. */
  untilReceived(count: number): Promise<void>;
  stop(): Promise<void>;
}

export async function startReceiver(): Promise<WebhookReceiver> {
  let waiting: (() => void)[] = [];
  const server = createServer((request, response) => {
    let body = '';
    request.setEncoding('utf8');
    request.on('data', (text: string) => {
      body += text;
    });
    request.on('end', () => {
      receiver.received.push({ headers: request.headers, body });
      reply(response, receiver.answer);
      for (const wake of waiting.splice(0)) wake();
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  // A TCP server that listens has an address of this kind.
  const { port } = server.address() as AddressInfo;
  const receiver: WebhookReceiver = {
    url: `http://127.0.0.1:${port}/news`,
    received: [],
    answer: 204,
    untilReceived: async (count) => {
      while (receiver.received.length < count) await new Promise<void>((resolve) => waiting.push(resolve));
      waiting = [];
    },
    stop: () => {
      server.closeAllConnections();
      return new Promise((resolve) => server.close(() => resolve()));
    },
  };
  return receiver;
}

function reply(response: ServerResponse, answer: number | 'nothing'): void {
  if (answer === 'nothing') return;
  const headers = answer === 302 ? { location: '/elsewhere' } : {};
  response.writeHead(answer, headers).end('x'.repeat(answer === 204 ? 0 : 100_000));
}
