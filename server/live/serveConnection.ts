import type { FastifyBaseLogger } from 'fastify';
import { readToken, type Token } from '../access/tokens/tokens.ts';
import type { Database } from '../database/openDatabase.ts';
import { notSignedIn, ProblemError, problemBody } from '../problems.ts';
import type { LivePush, LiveRequest } from '../schemas/live.ts';
import { problemMessage } from '../schemas/problemMessage.ts';
import type { Feeds } from './feeds.ts';
import { readRequest } from './readRequest.ts';
import type { Seats } from './seats.ts';
import { holderOf, sightOf } from './sight.ts';
import { CLOSE, type Socket } from './socket.ts';

const SIGN_IN_WITHIN_MS = 10_000;
/** How often a link is tried, and its session with it. */
const LOOK_EVERY_MS = 30_000;
const MOST_ROOMS = 50;
/** More than this within `LOOK_EVERY_MS` is no person's page. */
const MOST_MESSAGES = 200;
/** A reader that lies so far behind is cut off: it begins again and has missed nothing that it could not ask for. */
const MOST_BUFFERED_BYTES = 4 * 1024 * 1024;

interface ConnectionParts {
  readonly database: Database;
  readonly feeds: Feeds;
  readonly seats: Seats;
  readonly log: FastifyBaseLogger;
}

/** Serves one person's live feed from the opening of its socket to its end. `token` is null where none came with it. */
export function serveConnection(
  socket: Socket,
  token: Token | null,
  { database, feeds, seats, log }: ConnectionParts,
): void {
  let held = token;
  let open = true;
  let alive = true;
  let messages = 0;
  let turn = Promise.resolve();
  /** How to leave the seat that was taken. */
  let leave: (() => void) | null = null;
  /** How to stop each watch, by room; a watch that is being begun has none yet. */
  const watches = new Map<string, () => void>();

  const send = (push: LivePush): void => {
    if (!open) return;
    if (socket.bufferedAmount > MOST_BUFFERED_BYTES) socket.terminate();
    else socket.send(JSON.stringify(push));
  };
  /** Tells what went wrong; without a session there is nothing more to say. */
  const tell = (error: unknown, roomId?: string): void => {
    const known = error instanceof ProblemError ? error : null;
    if (known === null) log.error({ err: error }, 'A live message could not be answered.');
    const problem =
      known === null
        ? problemBody('unavailable', 'This cannot be answered for a moment. Try again.')
        : known.body;
    send({ ...problemMessage(problem), ...(roomId === undefined ? {} : { roomId }) });
    if (known?.problem === 'not-signed-in') socket.close(CLOSE.notSignedIn, 'Sign in first.');
  };
  const unwatch = (roomId: string): void => {
    watches.get(roomId)?.();
    watches.delete(roomId);
  };
  const maySee = async (roomId: string): Promise<boolean> => {
    try {
      await sightOf(database, held, roomId);
      return true;
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      unwatch(roomId);
      tell(error, roomId);
      return false;
    }
  };
  const watch = async (roomId: string): Promise<void> => {
    const scope = await sightOf(database, held, roomId);
    if (!watches.has(roomId) && watches.size >= MOST_ROOMS)
      throw new ProblemError('too-many-requests', `One connection watches at most ${MOST_ROOMS} rooms.`);
    unwatch(roomId);
    const stop = await feeds.watch(scope, roomId, { maySee: () => maySee(roomId), send });
    if (open) watches.set(roomId, stop);
    else stop();
  };
  const takeSeat = async (): Promise<void> => {
    const { personId } = await holderOf(database, held);
    if (!open || leave !== null) return;
    leave = seats.take(personId);
    if (leave !== null) return;
    tell(new ProblemError('too-many-requests', 'You have too many pages open.'));
    socket.close(CLOSE.policy, 'Too many pages are open.');
  };
  const answer = async (request: LiveRequest): Promise<void> => {
    if ('token' in request) {
      held = readToken(request.token);
      await takeSeat();
      return;
    }
    const { type, roomId } = request;
    if (type === 'unwatch') unwatch(roomId);
    else await watch(roomId).catch((error: unknown) => tell(error, roomId));
  };

  if (held !== null) turn = takeSeat().catch(tell);
  socket.on('message', (bytes, isBinary) => {
    messages += 1;
    if (messages > MOST_MESSAGES) {
      tell(new ProblemError('too-many-requests', 'These are too many messages.'));
      socket.close(CLOSE.policy, 'Too many messages.');
      return;
    }
    // One after the other: the answers come in the order of the questions.
    turn = turn
      .then(async () => {
        if (!open) return;
        await answer(readRequest(bytes, isBinary));
      })
      .catch(tell);
  });
  socket.on('pong', () => {
    alive = true;
  });
  const looking = setInterval(() => {
    if (!alive) return socket.terminate();
    alive = false;
    messages = 0;
    socket.ping();
    holderOf(database, held).catch((error: unknown) => {
      // A database that cannot answer for a moment is asked again with the next look.
      if (error instanceof ProblemError) tell(error);
      else log.error({ err: error }, 'The session of a live feed could not be looked up.');
    });
  }, LOOK_EVERY_MS);
  const signingIn = setTimeout(() => {
    if (held === null) tell(notSignedIn());
  }, SIGN_IN_WITHIN_MS);
  socket.on('close', () => {
    open = false;
    clearInterval(looking);
    clearTimeout(signingIn);
    for (const roomId of [...watches.keys()]) unwatch(roomId);
    leave?.();
  });
}
