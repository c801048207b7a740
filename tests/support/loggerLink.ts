import { encode } from 'cbor2';
import { decode } from 'cbor2/decoder';
import type { LinkAnswer } from '../../server/schemas/strokesLive.ts';
import { type Hearing, hear } from './hear.ts';

type Answer = LinkAnswer & { readonly form: 'json' | 'cbor' };

/** A logger's link, over a real socket. */
export interface LoggerLink extends Hearing<Answer> {
  sayCbor(message: unknown): void;
  /** Ends it as a lost network does. */
  drop(): Promise<number>;
}

/** Opens a link; rejects with the status where the upgrade is refused. */
export async function openLink(
  url: string,
  token: string | null,
  headers: Record<string, string> = {},
): Promise<LoggerLink> {
  const signed = token === null ? headers : { authorization: `Bearer ${token}`, ...headers };
  const hearing = await hear(`${url}/api/v1/strokes/live`, signed, answerIn);
  return {
    ...hearing,
    sayCbor: (message) => hearing.socket.send(encode(message)),
    drop: () => {
      hearing.socket.terminate();
      return hearing.closed;
    },
  };
}

function answerIn(bytes: Buffer, isBinary: boolean): Answer {
  // What the service says has the shape that a test then looks at.
  const answer = (isBinary ? decode(bytes) : JSON.parse(bytes.toString())) as LinkAnswer;
  return { ...answer, form: isBinary ? 'cbor' : 'json' };
}
