import { randomUUID } from 'node:crypto';
import type { FastifyBaseLogger } from 'fastify';
import { type JsonObject, own } from '../../ingest/json/faults.ts';
import { keyOf } from '../../ingest/json/stroke.ts';
import { rowsOfCaller } from '../access/callers/databaseOfCaller.ts';
import { loggerHolding } from '../access/callers/loggerTokens.ts';
import type { LoggerCaller } from '../access/scopes/caller.ts';
import { readToken, type Token } from '../access/tokens/tokens.ts';
import { type Database, inScope } from '../database/openDatabase.ts';
import { CLOSE, type Socket } from '../live/socket.ts';
import { notSignedIn, ProblemError } from '../problems.ts';
import { problemOf } from '../requests/errorHandler.ts';
import { problemMessage } from '../schemas/problemMessage.ts';
import type { LinkAnswer } from '../schemas/strokesLive.ts';
import { Conversation, type ConversationParts, type Taken } from './conversation.ts';
import { LinkProblem, TakenOver } from './linkProblem.ts';
import type { LoggerShare } from './loggerShare.ts';
import { type Form, readMessage, writeAnswer } from './wire.ts';

/** These greet, with a token or without. */
const HELLO: ReadonlySet<unknown> = new Set(['hello', 'token']);
/** These say something of a stroke; whatever else brings a good token was sent for its sake, however it is called. */
const OF_A_STROKE: ReadonlySet<unknown> = new Set(['begin', 'samples', 'end']);
const SIGN_IN_WITHIN_MS = 10_000;
/** Messages that wait for the database, and answers that wait for their reader: beyond these we stop reading. */
const MOST_IN_WORKS = { messages: 64, bytes: 1024 * 1024 };
/** How often the token is looked at again, and a sign of life given. */
const LOOK_EVERY_MS = 30_000;
/** More than this within `LOOK_EVERY_MS` is no logger that listens. */
const MOST_PROBLEMS = 500;

interface LinkParts extends Omit<ConversationParts, 'checkToken' | 'db' | 'pool' | 'share'> {
  readonly database: Database;
  readonly log: FastifyBaseLogger;
  /** A link on which no message came for so long is dropped. */
  readonly silentAfterMs: number;
  /** Answers what the logger has over all its links. */
  readonly onSignedIn: (link: Link, loggerId: string) => LoggerShare;
}

/** One open socket of a logger, from its opening to its end. */
export class Link {
  readonly id: string = randomUUID();
  readonly #socket: Socket;
  readonly #parts: LinkParts;
  #token: Token | null;
  #logger: LoggerCaller | null = null;
  #conversation: Conversation | null = null;
  #share: LoggerShare | null = null;
  /** The form of the latest message: what nobody asked for is said in it. */
  #form: Form = 'json';
  /** Ends when all messages so far were taken: they are taken one after the other. */
  #turn: Promise<void> = Promise.resolve();
  #open = true;
  #paused = false;
  #inWorks = { messages: 0, bytes: 0 };
  #unread = 0;
  #problems = 0;
  readonly #timers: NodeJS.Timeout[];
  readonly #silence: NodeJS.Timeout;

  constructor(socket: Socket, token: Token | null, parts: LinkParts) {
    this.#socket = socket;
    this.#token = token;
    this.#parts = parts;
    if (token !== null) this.#turn = this.#signIn(token).catch((error: unknown) => this.#tell(error));
    socket.on('message', (bytes, isBinary) => this.#receive(bytes, isBinary ? 'cbor' : 'json'));
    socket.on('close', () => this.#closed());
    this.#silence = setTimeout(() => this.#silent(), parts.silentAfterMs);
    this.#timers = [
      setInterval(() => this.#look(), LOOK_EVERY_MS),
      setTimeout(() => {
        if (this.#token === null) this.#tell(notSignedIn());
      }, SIGN_IN_WITHIN_MS),
    ];
  }

  /** Resolves once everything that was received is settled. */
  settled(): Promise<void> {
    return this.#turn;
  }

  /** Strokes under way on it. */
  get strokes(): number {
    return this.#conversation?.strokes ?? 0;
  }

  /** Told that another link has its stroke now, and dropped. */
  takenOver(key: string): void {
    this.#tell(new TakenOver(key));
  }

  close(code: number, reason: string): void {
    this.#socket.close(code, reason);
  }

  #receive(bytes: Buffer, form: Form): void {
    this.#silence.refresh();
    this.#form = form;
    const share = this.#share;
    this.#inWorks.messages++;
    this.#inWorks.bytes += bytes.length;
    share?.count(bytes.length);
    this.holdBack();
    this.#turn = this.#turn.then(async () => {
      const { settled } = await this.#take(bytes, form);
      void settled.then(() => {
        this.#inWorks.messages--;
        this.#inWorks.bytes -= bytes.length;
        share?.count(-bytes.length);
        this.holdBack();
      });
    });
  }

  /** Never rejects: whatever goes wrong is told. */
  async #take(bytes: Buffer, form: Form): Promise<Taken> {
    const nothing: Taken = { settled: Promise.resolve() };
    if (!this.#open) return nothing;
    let message: JsonObject | null = null;
    try {
      message = readMessage(bytes, form);
      const said = own(message, 'type');
      const token = own(message, 'token');
      if (typeof token === 'string') await this.#signIn(readToken(token));
      if (this.#conversation === null) throw notSignedIn();
      if (HELLO.has(said) || (typeof token === 'string' && !OF_A_STROKE.has(said))) return nothing;
      const { settled } = await this.#conversation.take(message, (answer) => this.#say(answer, form));
      return { settled: settled.catch((error: unknown) => this.#tell(error, message, form)) };
    } catch (error) {
      this.#tell(error, message, form);
      return nothing;
    }
  }

  async #signIn(token: Token | null): Promise<void> {
    const logger = await loggerHolding(this.#parts.database, token);
    if (this.#logger !== null && this.#logger.loggerId !== logger.loggerId) throw notSignedIn();
    this.#token = token;
    if (this.#logger !== null || !this.#open) return;
    this.#logger = logger;
    this.#share = this.#parts.onSignedIn(this, logger.loggerId);
    this.#conversation = new Conversation(
      { ...logger, linkId: this.id },
      {
        ...this.#parts,
        share: this.#share,
        ...inScope(this.#parts.database, rowsOfCaller(logger)),
        checkToken: () => this.#checkToken(),
      },
    );
  }

  #say(answer: LinkAnswer, form: Form): void {
    if (!this.#open) return;
    this.#unread++;
    this.#socket.send(writeAnswer(answer, form), () => {
      this.#unread--;
      this.holdBack();
    });
    this.holdBack();
  }

  /** Reads on only while what was read is being dealt with, here and for the logger's other links, and what was answered is being read. */
  holdBack(): void {
    const { messages, bytes } = this.#inWorks;
    const isMine = messages + this.#unread > MOST_IN_WORKS.messages || bytes > MOST_IN_WORKS.bytes;
    const busy = isMine || this.#share?.isFull === true;
    if (busy === this.#paused || !this.#open) return;
    this.#paused = busy;
    if (busy) this.#socket.pause();
    else this.#socket.resume();
  }

  /** Tells what went wrong, and ends the link where it cannot go on. */
  #tell(error: unknown, message: JsonObject | null = null, form: Form = this.#form): void {
    const problem = this.#problemOf(error);
    const about = error instanceof LinkProblem ? error.about : keyIn(message);
    this.#say(problemMessage(problem.body, about), form);
    this.#problems++;
    if (problem.problem === 'not-signed-in') this.close(CLOSE.notSignedIn, 'A logger’s token is needed.');
    else if (isOurs(problem)) this.close(CLOSE.tryAgainLater, 'Begin again in a while.');
    else if (error instanceof TakenOver) this.close(CLOSE.takenOver, 'Another link has this stroke now.');
    else if (this.#problems > MOST_PROBLEMS) this.close(CLOSE.policy, 'Too many problems.');
  }

  #problemOf(error: unknown): ProblemError {
    const problem = problemOf(error);
    if (isOurs(problem)) this.#parts.log.error({ err: error }, 'A message of a link could not be answered.');
    return problem;
  }

  #look(): void {
    this.#problems = 0;
    if (this.#token === null) return;
    this.#socket.ping();
    this.#checkToken().catch((error: unknown) => {
      // A database that is away for a moment ends no link: the pieces themselves will tell.
      if (error instanceof ProblemError) this.#tell(error);
      else this.#parts.log.warn({ err: error }, 'A link could not be looked at.');
    });
  }

  async #checkToken(): Promise<void> {
    await loggerHolding(this.#parts.database, this.#token);
  }

  #silent(): void {
    // It may be that we do not listen: its pieces wait for the database.
    if ((this.#inWorks.messages > 0 || this.#paused) && this.#unread === 0) this.#silence.refresh();
    else if (this.#unread > 0) this.#socket.terminate();
    else this.close(CLOSE.silent, 'Nothing was heard for too long.');
  }

  #closed(): void {
    this.#open = false;
    clearTimeout(this.#silence);
    for (const timer of this.#timers) clearTimeout(timer);
  }
}

function isOurs({ status }: ProblemError): boolean {
  return status >= 500;
}

function keyIn(message: JsonObject | null): { key?: string } {
  const key = message === null ? null : keyOf(message);
  return key === null ? {} : { key };
}
