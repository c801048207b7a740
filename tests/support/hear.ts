import { WebSocket } from 'ws';

/** What the service says on an open socket. */
export interface Hearing<Message extends { readonly type: string }> {
  readonly socket: WebSocket;
  /** Objects go as JSON, texts and bytes as they are. */
  say(message: unknown): void;
  /** The next message, or the next of a type, those before it passed over. Fails where the socket closes first. */
  next<Type extends Message['type']>(type?: Type): Promise<Extract<Message, { type: Type }>>;
  /** All that was heard so far and not asked for. */
  readonly heard: readonly Message[];
  /** The code with which it was closed. */
  readonly closed: Promise<number>;
}

/** Opens a socket; rejects with the status where the upgrade is refused. */
export function hear<Message extends { readonly type: string }>(
  url: string,
  headers: Record<string, string>,
  read: (bytes: Buffer, isBinary: boolean) => Message,
): Promise<Hearing<Message>> {
  const socket = new WebSocket(url.replace('http', 'ws'), { headers });
  const heard: Message[] = [];
  let wake = (): void => undefined;
  let over = false;
  // The library hands over buffers unless it is asked for something else.
  socket.on('message', (bytes: Buffer, isBinary) => {
    heard.push(read(bytes, isBinary));
    wake();
  });
  const closed = new Promise<number>((resolve) => {
    socket.on('close', (code) => {
      over = true;
      resolve(code);
      wake();
    });
  });
  const next = async <Type extends Message['type']>(type?: Type) => {
    for (;;) {
      const message = heard.shift();
      // Just looked at: it is of the type that was asked for.
      if (message !== undefined && (type === undefined || message.type === type))
        return message as Extract<Message, { type: Type }>;
      if (message !== undefined) continue;
      if (over) throw new Error('The socket was closed.');
      await new Promise<void>((resolve) => {
        wake = resolve;
      });
    }
  };
  const say = (message: unknown): void => {
    const isRaw = typeof message === 'string' || message instanceof Uint8Array;
    socket.send(isRaw ? message : JSON.stringify(message));
  };
  return new Promise((resolve, reject) => {
    socket.on('unexpected-response', (_request, { statusCode }) => {
      reject(new Error(`The upgrade was refused with ${statusCode}.`));
    });
    socket.on('error', reject);
    socket.on('open', () => resolve({ socket, say, next, heard, closed }));
  });
}
