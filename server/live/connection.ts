import type { FastifyBaseLogger } from 'fastify';
import { readToken, type Token } from '../access/tokens/tokens.ts';
import type { Database } from '../database/openDatabase.ts';
import { notSignedIn, ProblemError, problemBody } from '../problems.ts';
import type { LivePush, LiveRequest } from '../schemas/live.ts';
import { problemMessage } from '../schemas/problemMessage.ts';
import type { Feeds } from './feeds.ts';
import { readRequest } from './readRequest.ts';
import type { Seats } from './seats.ts';
import { holderOf } from './sight.ts';
import { CLOSE, type Socket } from './socket.ts';
import { Watches } from './watches.ts';

const SIGN_IN_WITHIN_MS = 10_000;
/** How often a connection is tried, and its session with it. */
const LOOK_EVERY_MS = 30_000;
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

/** One person's open socket with a live feed, from its opening to its end. */
export class Connection {
  readonly #socket: Socket;
  readonly #parts: ConnectionParts;
  readonly #watches: Watches;
  readonly #timers: NodeJS.Timeout[];
  #token: Token | null;
  /** How to leave the seat that was taken. */
  #leave: (() => void) | null = null;
  /** Ends when all messages so far were answered: they are, one after the other. */
  #turn: Promise<void> = Promise.resolve();
  #open = true;
  /** Whether the other end has answered since the latest look. */
  #isAlive = true;
  /** Messages since the latest look. */
  #messages = 0;

  /** `token` is null where none came with the opening. */
  constructor(socket: Socket, token: Token | null, parts: ConnectionParts) {
    this.#socket = socket;
    this.#token = token;
    this.#parts = parts;
    this.#watches = new Watches({
      ...parts,
      holding: () => this.#token,
      send: (push) => this.#send(push),
      tell: (problem, roomId) => this.#tell(problem, roomId),
    });
    if (token !== null) this.#turn = this.#takeSeat().catch((error: unknown) => this.#tell(error));
    socket.on('message', (bytes, isBinary) => this.#receive(bytes, isBinary));
    socket.on('pong', () => {
      this.#isAlive = true;
    });
    socket.on('close', () => this.#closed());
    this.#timers = [
      setInterval(() => this.#look(), LOOK_EVERY_MS),
      setTimeout(() => {
        if (this.#token === null) this.#tell(notSignedIn());
      }, SIGN_IN_WITHIN_MS),
    ];
  }

  #receive(bytes: Buffer, isBinary: boolean): void {
    this.#messages += 1;
    if (this.#messages > MOST_MESSAGES) {
      this.#tell(new ProblemError('too-many-requests', 'These are too many messages.'));
      this.#socket.close(CLOSE.policy, 'Too many messages.');
      return;
    }
    this.#turn = this.#turn
      .then(async () => {
        if (this.#open) await this.#answer(readRequest(bytes, isBinary));
      })
      .catch((error: unknown) => this.#tell(error));
  }

  async #answer(request: LiveRequest): Promise<void> {
    if ('token' in request) {
      this.#token = readToken(request.token);
      await this.#takeSeat();
      return;
    }
    const { type, roomId } = request;
    if (type === 'unwatch') this.#watches.stop(roomId);
    else await this.#watches.begin(roomId).catch((error: unknown) => this.#tell(error, roomId));
  }

  async #takeSeat(): Promise<void> {
    const { database, seats } = this.#parts;
    const { personId } = await holderOf(database, this.#token);
    if (!this.#open || this.#leave !== null) return;
    this.#leave = seats.take(personId);
    if (this.#leave !== null) return;
    this.#tell(new ProblemError('too-many-requests', 'You have too many pages open.'));
    this.#socket.close(CLOSE.policy, 'Too many pages are open.');
  }

  #send(push: LivePush): void {
    if (!this.#open) return;
    if (this.#socket.bufferedAmount > MOST_BUFFERED_BYTES) this.#socket.terminate();
    else this.#socket.send(JSON.stringify(push));
  }

  /** Tells what went wrong; without a session there is nothing more to say. */
  #tell(error: unknown, roomId?: string): void {
    const known = error instanceof ProblemError ? error : null;
    if (known === null) this.#parts.log.error({ err: error }, 'A live message could not be answered.');
    const problem =
      known === null
        ? problemBody('unavailable', 'This cannot be answered for a moment. Try again.')
        : known.body;
    this.#send({ ...problemMessage(problem), ...(roomId === undefined ? {} : { roomId }) });
    if (known?.problem === 'not-signed-in') this.#socket.close(CLOSE.notSignedIn, 'Sign in first.');
  }

  /** Ends a connection whose other end is gone, and one whose session is over. */
  #look(): void {
    if (!this.#isAlive) {
      this.#socket.terminate();
      return;
    }
    this.#isAlive = false;
    this.#messages = 0;
    this.#socket.ping();
    holderOf(this.#parts.database, this.#token).catch((error: unknown) => {
      // A database that cannot answer for a moment is asked again with the next look.
      if (error instanceof ProblemError) this.#tell(error);
      else this.#parts.log.error({ err: error }, 'The session of a live feed could not be looked up.');
    });
  }

  #closed(): void {
    this.#open = false;
    for (const timer of this.#timers) clearTimeout(timer);
    this.#watches.end();
    this.#leave?.();
  }
}
