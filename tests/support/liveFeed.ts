import { createRequire } from 'node:module';
import type { LivePush } from '../../server/schemas/live.ts';

interface Opened {
  send(message: string | Uint8Array): void;
  close(): void;
  on(event: 'open', then: () => void): void;
  on(event: 'message', then: (bytes: Buffer) => void): void;
  on(event: 'close', then: (code: number) => void): void;
  on(event: 'error', then: (error: Error) => void): void;
  on(event: 'unexpected-response', then: (request: unknown, response: { statusCode: number }) => void): void;
}

// The library that the service's own sockets come from, without a package of types.
const WebSocket: new (url: string, options: { headers: Record<string, string> }) => Opened = createRequire(
  import.meta.url,
)('ws');

/** One person's live feed, over a real socket. */
export interface LiveFeed {
  /** Objects go as JSON, texts and bytes as they are. */
  say(message: unknown): void;
  /** The next push, or the next of a type, those before it passed over. Fails where the socket closes first. */
  next<Type extends LivePush['type']>(type?: Type): Promise<Extract<LivePush, { type: Type }>>;
  /** The code with which it was closed. */
  readonly closed: Promise<number>;
  close(): void;
}

/** Opens a feed; rejects with the status where the upgrade is refused. */
export function openFeed(url: string, headers: Record<string, string> = {}): Promise<LiveFeed> {
  const socket = new WebSocket(`${url.replace('http', 'ws')}/api/v1/live`, { headers });
  const pushes: LivePush[] = [];
  let wake = (): void => undefined;
  let over = false;
  socket.on('message', (bytes) => {
    // What the service says has the shape that a test then looks at.
    pushes.push(JSON.parse(bytes.toString()) as LivePush);
    wake();
  });
  const closed = new Promise<number>((resolve) => {
    socket.on('close', (code) => {
      over = true;
      resolve(code);
      wake();
    });
  });
  const next = async <Type extends LivePush['type']>(type?: Type) => {
    for (;;) {
      const push = pushes.shift();
      // Just looked at: it is of the type that was asked for.
      if (push !== undefined && (type === undefined || push.type === type))
        return push as Extract<LivePush, { type: Type }>;
      if (push !== undefined) continue;
      if (over) throw new Error('The feed was closed.');
      await new Promise<void>((resolve) => {
        wake = resolve;
      });
    }
  };
  return new Promise((resolve, reject) => {
    socket.on('unexpected-response', (_request, { statusCode }) => {
      reject(new Error(`The upgrade was refused with ${statusCode}.`));
    });
    socket.on('error', reject);
    socket.on('open', () =>
      resolve({
        say: (message) => {
          const raw = typeof message === 'string' || message instanceof Uint8Array;
          socket.send(raw ? message : JSON.stringify(message));
        },
        next,
        closed,
        close: () => socket.close(),
      }),
    );
  });
}
