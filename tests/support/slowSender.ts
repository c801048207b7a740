import { once } from 'node:events';
import { connect, type Socket } from 'node:net';

/** A request on a connection of its own, sent piece by piece, which `fetch` would not do. */
export interface SlowSender {
  send(piece: string): void;
  /** Everything that came, once the other end has closed the connection. */
  readonly answer: Promise<string>;
  end(): void;
}

/** Connects and sends the lines of a request's head; `more` lines are its headers. */
export async function slowSender(url: string, first: string, ...more: string[]): Promise<SlowSender> {
  const { hostname, port } = new URL(url);
  const socket = connect(Number(port), hostname);
  await once(socket, 'connect');
  socket.write([first, `host: ${hostname}`, ...more, ''].join('\r\n'));
  return { send: (piece) => socket.write(piece), answer: wholeAnswer(socket), end: () => socket.destroy() };
}

async function wholeAnswer(socket: Socket): Promise<string> {
  let text = '';
  socket.on('data', (chunk) => {
    text += chunk;
  });
  // A connection that is cut without a word has answered nothing.
  socket.on('error', () => socket.destroy());
  await once(socket, 'close');
  return text;
}

/** The status line's code, the headers and the body of an answer as it came. */
export function readAnswer(text: string): { status: number; head: string; body: string } {
  const [head, body = ''] = text.split('\r\n\r\n', 2);
  return { status: Number(head.split(' ')[1]), head: head.toLowerCase(), body };
}
