import { createRequire } from 'node:module';
import { encode } from 'cbor2';
import { decode } from 'cbor2/decoder';
import type { LinkAnswer } from '../../server/schemas/strokesLive.ts';

interface Opened {
  readonly bufferedAmount: number;
  send(message: string | Uint8Array): void;
  close(): void;
  terminate(): void;
  pause(): void;
  resume(): void;
  on(event: 'open' | 'pong' | 'ping', then: () => void): void;
  on(event: 'message', then: (bytes: Buffer, isBinary: boolean) => void): void;
  on(event: 'close', then: (code: number) => void): void;
  on(event: 'error', then: (error: Error) => void): void;
  on(event: 'unexpected-response', then: (request: unknown, response: { statusCode: number }) => void): void;
}

// The library that the service's own sockets come from, without a package of types.
const WebSocket: new (url: string, options: { headers: Record<string, string> }) => Opened = createRequire(
  import.meta.url,
)('ws');

type Answer<Type extends LinkAnswer['type']> = Extract<LinkAnswer, { type: Type }> & {
  form: 'json' | 'cbor';
};

/** A logger's link, over a real socket. */
export interface LoggerLink {
  readonly socket: Opened;
  /** Objects go as JSON, texts and bytes as they are. */
  say(message: unknown): void;
  sayCbor(message: unknown): void;
  /** The next answer, or the next of a type, those before it passed over. Fails where the link ends first. */
  next<Type extends LinkAnswer['type']>(type?: Type): Promise<Answer<Type>>;
  /** All that was heard so far and not asked for. */
  readonly heard: readonly LinkAnswer[];
  /** The code with which it was closed. */
  readonly closed: Promise<number>;
  /** Ends it as a lost network does. */
  drop(): Promise<number>;
}

/** Opens a link; rejects with the status where the upgrade is refused. */
export function openLink(
  url: string,
  token: string | null,
  headers: Record<string, string> = {},
): Promise<LoggerLink> {
  const socket = new WebSocket(`${url.replace('http', 'ws')}/api/v1/strokes/live`, {
    headers: token === null ? headers : { authorization: `Bearer ${token}`, ...headers },
  });
  const answers: (LinkAnswer & { form: 'json' | 'cbor' })[] = [];
  let wake = (): void => undefined;
  let over = false;
  socket.on('message', (bytes, isBinary) => {
    // What the service says has the shape that a test then looks at.
    const answer = (isBinary ? decode(bytes) : JSON.parse(bytes.toString())) as LinkAnswer;
    answers.push({ ...answer, form: isBinary ? 'cbor' : 'json' });
    wake();
  });
  const closed = new Promise<number>((resolve) => {
    socket.on('close', (code) => {
      over = true;
      resolve(code);
      wake();
    });
  });
  const next = async <Type extends LinkAnswer['type']>(type?: Type) => {
    for (;;) {
      const answer = answers.shift();
      // Just looked at: it is of the type that was asked for.
      if (answer !== undefined && (type === undefined || answer.type === type)) return answer as Answer<Type>;
      if (answer !== undefined) continue;
      if (over) throw new Error('The link was closed.');
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
        socket,
        say: (message) => {
          const raw = typeof message === 'string' || message instanceof Uint8Array;
          socket.send(raw ? message : JSON.stringify(message));
        },
        sayCbor: (message) => socket.send(encode(message)),
        next,
        heard: answers,
        closed,
        drop: () => {
          socket.terminate();
          return closed;
        },
      }),
    );
  });
}
