import { createServer, type Socket } from 'node:net';

/** A mail server of the least that RFC 5321 asks for, which keeps what it is given. */
export interface TestMailServer {
  /** Such as `smtp://127.0.0.1:2525`. */
  readonly url: string;
  /** Whole messages, as they came. */
  readonly received: string[];
  /** Addresses that it refuses for good. */
  readonly refused: Set<string>;
  /** Addresses that it cannot take anything for at the moment. */
  readonly busy: Set<string>;
  stop(): Promise<void>;
}

export async function startMailServer(): Promise<TestMailServer> {
  const received: string[] = [];
  const refused = new Set<string>();
  const busy = new Set<string>();
  const sockets = new Set<Socket>();
  const server = createServer((socket) => {
    sockets.add(socket);
    socket.once('close', () => sockets.delete(socket));
    // A sender that leaves in the middle has left.
    socket.on('error', () => socket.destroy());
    talk(socket, received, { refused, busy });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new TypeError('A TCP server has a port.');
  return {
    url: `smtp://127.0.0.1:${address.port}`,
    received,
    refused,
    busy,
    stop: () => {
      for (const socket of sockets) socket.destroy();
      return new Promise((resolve) => server.close(() => resolve()));
    },
  };
}

type Addresses = Pick<TestMailServer, 'refused' | 'busy'>;

/** Commands are answered line by line; what follows DATA is kept, up to a line with a single dot. */
function talk(socket: Socket, received: string[], addresses: Addresses): void {
  let unread = '';
  let message: string | null = null;
  const say = (line: string) => socket.write(`${line}\r\n`);
  say('220 ready');
  socket.setEncoding('utf8');
  socket.on('data', (text: string) => {
    unread += text;
    for (let end = unread.indexOf('\r\n'); end >= 0; end = unread.indexOf('\r\n')) {
      const line = unread.slice(0, end);
      unread = unread.slice(end + 2);
      // A dot at the beginning was doubled (RFC 5321, section 4.5.2).
      if (message !== null && line !== '.') message += `${line.replace(/^\./, '')}\r\n`;
      else if (message !== null) {
        // A line that is too long is broken with "=" at its end (RFC 2045, section 6.7).
        received.push(message.replaceAll('=\r\n', ''));
        message = null;
        say('250 kept');
      } else message = command(line, say, addresses);
    }
  });
}

/** Answers one command; the beginning of a message where it asked to send one. */
function command(line: string, say: (line: string) => void, { refused, busy }: Addresses): string | null {
  const [verb] = line.toUpperCase().split(' ');
  const recipient = /^RCPT TO:<([^>]*)>/i.exec(line)?.[1];
  if (recipient !== undefined && refused.has(recipient)) say('550 there is no such mailbox');
  else if (recipient !== undefined && busy.has(recipient)) say('451 try again later');
  else if (verb === 'DATA') {
    say('354 go on');
    return '';
  } else say(verb === 'QUIT' ? '221 bye' : '250 ok');
  return null;
}
