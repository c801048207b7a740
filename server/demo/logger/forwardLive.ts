import { once } from 'node:events';
import { setTimeout as wait } from 'node:timers/promises';
import { encode } from 'cbor2';
import { decode } from 'cbor2/decoder';
import { WebSocket } from 'ws';
import type { LinkAnswer } from '../../schemas/strokesLive.ts';
import { BackOff } from './backOff.ts';
import { forward, type Sending, type Tally, TokenRefused } from './forward.ts';
import type { OutgoingStroke } from './outgoingStroke.ts';
import { beginOf, isSteady, type Piece, piecesOf } from './pieces.ts';

/** Pieces on their way at once. */
const MOST_UNACKNOWLEDGED = 32;
const NOT_SIGNED_IN = 4401;

interface LiveSending extends Sending {
  /** Times quicker than it happened; 0: as quickly as it is acknowledged. */
  readonly speed: number;
}

/**
 * Sends what lies in the spool piece by piece, as if it happened now: a lost link is taken up where the
 * acknowledgements ended. What cannot be sent so goes whole, at the end.
 */
export async function forwardLive(sending: LiveSending): Promise<Tally> {
  const { spool, say } = sending;
  const tally: Tally = { stored: 0, refused: 0 };
  const backOff = new BackOff(sending.mostWaitMs, sending.stopping);
  for (const stroke of (await spool.oldest(Number.POSITIVE_INFINITY)).filter(isSteady)) {
    for (;;) {
      sending.stopping.throwIfAborted();
      const outcome = await sendOnce(sending, stroke, () => backOff.reset());
      if (outcome === 'dropped') {
        say('The link was lost.');
        await backOff.wait();
        continue;
      }
      await (outcome === 'stored' ? spool.forget(stroke) : spool.setAside(stroke));
      tally[outcome]++;
      say(`${outcome} ${stroke.key}`);
      break;
    }
  }
  const whole = await forward(sending);
  return { stored: tally.stored + whole.stored, refused: tally.refused + whole.refused };
}

type Outcome = 'stored' | 'refused' | 'dropped';

/** One link, from its opening to the stroke's end or its own. */
async function sendOnce(
  { url, token, form, speed, stopping }: LiveSending,
  stroke: OutgoingStroke,
  onProgress: () => void,
): Promise<Outcome> {
  const socket = new WebSocket(`${url.replace(/^http/, 'ws')}/api/v1/strokes/live`, {
    headers: { authorization: `Bearer ${token}` },
  });
  const link = new AbortController();
  const stop = () => socket.terminate();
  stopping.addEventListener('abort', stop, { once: true });
  let refused = false;
  socket.on('unexpected-response', (_request, response) => {
    refused = response.statusCode === 401;
    socket.terminate();
  });
  // Its closing tells all there is to do.
  socket.on('error', () => undefined);
  const closed = new Promise<number>((resolve) => {
    socket.on('close', (code) => {
      link.abort();
      resolve(code);
    });
  });
  try {
    await once(socket, 'open', { signal: link.signal });
    const say = (message: object) => socket.send(form === 'cbor' ? encode(message) : JSON.stringify(message));
    return await converse(socket, stroke, { say, speed, link: link.signal, onProgress });
  } catch (error) {
    if (!link.signal.aborted) throw error;
    const code = await closed;
    stopping.throwIfAborted();
    if (refused || code === NOT_SIGNED_IN) throw new TokenRefused('The service does not know this token.');
    return 'dropped';
  } finally {
    stopping.removeEventListener('abort', stop);
    socket.close();
  }
}

interface Talk {
  readonly say: (message: object) => void;
  readonly speed: number;
  /** Aborted when the link ends. */
  readonly link: AbortSignal;
  readonly onProgress: () => void;
}

/** Says the pieces in their time, goes back or on where the service asks for it, and ends the stroke. */
async function converse(
  socket: WebSocket,
  stroke: OutgoingStroke,
  { say, speed, link, onProgress }: Talk,
): Promise<Outcome> {
  const pieces: readonly Piece[] = piecesOf(stroke);
  const startedMs = performance.now();
  let next = 0;
  let acknowledged = 0;
  let isEnded = false;
  let outcome: Outcome | null = null;
  let wake = (): void => undefined;
  socket.on('message', (bytes: Buffer, isBinary: boolean) => {
    // What the service says has the shape that its own schema gives it.
    const answer = (isBinary ? decode(bytes) : JSON.parse(bytes.toString())) as LinkAnswer;
    if (answer.type === 'ack') {
      acknowledged = Math.max(acknowledged, answer.seq + 1);
      onProgress();
    } else if (answer.type === 'stored') outcome = 'stored';
    else if (answer.type === 'resume') next = acknowledged = answer.nextSeq;
    else if (answer.nextSeq !== undefined) next = answer.nextSeq;
    else if (answer.status === 422 || answer.status === 409) outcome = 'refused';
    else socket.terminate();
    wake();
  });
  link.addEventListener('abort', () => wake());
  say(beginOf(stroke));
  for (;;) {
    if (outcome !== null) return outcome;
    link.throwIfAborted();
    const piece = pieces[next];
    if (piece !== undefined && next - acknowledged < MOST_UNACKNOWLEDGED) {
      const dueMs = speed === 0 ? 0 : startedMs + (1000 * piece.endsAtS) / speed - performance.now();
      if (dueMs > 0) await wait(dueMs, undefined, { signal: link });
      if (pieces[next] === piece) {
        say(piece.message);
        next++;
      }
      // Lets answers in between two pieces.
      await new Promise(setImmediate);
      continue;
    }
    if (piece === undefined && acknowledged >= pieces.length && !isEnded) {
      isEnded = true;
      say({ type: 'end', key: stroke.key });
    }
    await new Promise<void>((resolve) => {
      wake = resolve;
    });
  }
}
