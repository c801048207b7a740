import type { Kysely } from 'kysely';
import { isOutOfSight } from '../../ingest/errorCode.ts';
import { type JsonObject, own } from '../../ingest/json/faults.ts';
import { keyOf } from '../../ingest/json/stroke.ts';
import { MAX_SAMPLES } from '../../ingest/limits.ts';
import { packSamples } from '../../ingest/live/assemble.ts';
import { type Ending, endLiveStroke } from '../../ingest/live/finish.ts';
import { type LiveHeader, readHeader } from '../../ingest/live/header.ts';
import {
  type Beginning,
  beginLiveStroke,
  type LiveSender,
  linkOf,
  storedStroke,
} from '../../ingest/live/liveStroke.ts';
import type { PieceWriter } from '../../ingest/live/pieceWriter.ts';
import { readSamples, SampleCounts, seqOf } from '../../ingest/live/samples.ts';
import type { Connections } from '../../ingest/queries.ts';
import type { Tables } from '../../migrations/tables.ts';
import { inTransaction } from '../database/inTransaction.ts';
import { invalidField } from '../problems.ts';
import type { LinkAnswer } from '../schemas/strokesLive.ts';
import { beginningProblem, endingProblem, LinkProblem, TakenOver } from './linkProblem.ts';
import { type LoggerShare, MOST_OF_ONE_LOGGER } from './loggerShare.ts';

interface OpenStroke {
  readonly id: string;
  readonly header: LiveHeader;
  readonly counts: SampleCounts;
  nextSeq: number;
  /** Whether the last piece was kept, once that is settled, and with it all before it. It never rejects. */
  lastPiece: Promise<boolean>;
}

export interface ConversationParts {
  readonly db: Kysely<Tables>;
  readonly pool: Connections;
  readonly writer: PieceWriter;
  /** What the logger has under way over all its links, this one among them. */
  readonly share: Pick<LoggerShare, 'strokes'>;
  /** Does the work once fewer than so many beginnings and endings of all links are under way. */
  readonly inTurn: <Result>(work: () => Promise<Result>) => Promise<Result>;
  /** Told which link a stroke was taken over from. */
  readonly onTakeOver: (linkId: string, key: string) => void;
  /** Throws the 401 problem where the logger's token is worth nothing any more. */
  readonly checkToken: () => Promise<void>;
}

type Say = (answer: LinkAnswer) => void;

/** The work that a message leaves behind; the next one is taken without waiting for it. */
export interface Taken {
  readonly settled: Promise<void>;
}

const SETTLED: Taken = { settled: Promise.resolve() };

/**
 * What a logger says on one link, and what it is answered; one message at a time. The states of a stroke: begun
 * (samples are taken while the row in `live_strokes` names this link), then stored, or left to another link or time.
 */
export class Conversation {
  readonly #sender: LiveSender;
  readonly #parts: ConversationParts;
  readonly #open = new Map<string, OpenStroke>();
  #beginning = 0;

  constructor(sender: LiveSender, parts: ConversationParts) {
    this.#sender = sender;
    this.#parts = parts;
  }

  /** Those under way, one that just begins among them. */
  get strokes(): number {
    return this.#open.size + this.#beginning;
  }

  /** Throws what a message is answered with when it is not taken. */
  async take(message: JsonObject, say: Say): Promise<Taken> {
    const type = own(message, 'type');
    if (type === 'begin') {
      await this.#begin(readHeader(message), say);
      return SETTLED;
    }
    if (type !== 'samples' && type !== 'end')
      throw invalidField('/type', 'Must be one of: hello, begin, samples, end.');
    const stroke = await this.#strokeOf(message, say);
    if (stroke === null) return SETTLED;
    if (type === 'samples') return this.#samples(stroke, message, say);
    await this.#end(stroke, say);
    return SETTLED;
  }

  async #begin(header: LiveHeader, say: Say): Promise<void> {
    const { key } = header;
    const before = this.#open.get(key);
    await before?.lastPiece;
    const { strokes: most } = MOST_OF_ONE_LOGGER;
    if (before === undefined && this.#parts.share.strokes >= most)
      throw new LinkProblem('too-many-requests', `One logger has at most ${most} strokes under way.`, {
        key,
      });
    const begun = await this.#begun(header);
    switch (begun.outcome) {
      case 'stored':
        this.#open.delete(key);
        say({ type: 'stored', key, strokeId: begun.strokeId });
        return;
      case 'begun':
        this.#keepOpen(header, begun.strokeId, 0, new SampleCounts());
        return;
      case 'resumed':
        if (begun.tookOver !== this.#sender.linkId) this.#parts.onTakeOver(begun.tookOver, key);
        this.#keepOpen(header, begun.strokeId, begun.nextSeq, begun.counts);
        say({ type: 'resume', key, nextSeq: begun.nextSeq });
        return;
      default:
        throw beginningProblem(begun, header);
    }
  }

  async #begun(header: LiveHeader): Promise<Beginning> {
    this.#beginning = 1;
    try {
      return await this.#parts.inTurn(() =>
        inTransaction(this.#parts.db, (trx) => beginLiveStroke(trx, this.#sender, header)),
      );
    } catch (error) {
      if (!isOutOfSight(error)) throw error;
      await this.#parts.checkToken();
      throw new LinkProblem('not-found', 'The room of this stroke is there no more.', { key: header.key });
    } finally {
      this.#beginning = 0;
    }
  }

  #keepOpen(header: LiveHeader, id: string, nextSeq: number, counts: SampleCounts): void {
    this.#open.set(header.key, { id, header, counts, nextSeq, lastPiece: Promise.resolve(true) });
  }

  #samples(stroke: OpenStroke, message: JsonObject, say: Say): Taken {
    const { key } = stroke.header;
    const seq = seqOf(message);
    // Sent once more: the first one stands, and is acknowledged again once it is safe. What became of one that is not
    // has been told of it already.
    if (seq !== null && seq < stroke.nextSeq) {
      const settled = stroke.lastPiece.then((isKept) => {
        if (isKept) say({ type: 'ack', key, seq });
      });
      return { settled };
    }
    if (seq !== null && seq > stroke.nextSeq)
      throw new LinkProblem('conflict', `Piece ${stroke.nextSeq} comes next; this is ${seq}.`, {
        key,
        nextSeq: stroke.nextSeq,
      });
    const piece = readSamples(message, stroke.header);
    if (stroke.counts.wouldOverflow(piece.side, piece.samples.length))
      throw invalidField('', `A side of a stroke has at most ${MAX_SAMPLES} samples.`);
    const kept = this.#parts.writer.keep({
      accountId: this.#sender.accountId,
      linkId: this.#sender.linkId,
      strokeId: stroke.id,
      seq: piece.seq,
      side: piece.side,
      firstSample: stroke.counts.add(piece.side, piece.samples.length),
      samples: packSamples(piece.samples),
    });
    stroke.nextSeq++;
    const settled = kept.then(async (isKept) => {
      if (isKept) say({ type: 'ack', key, seq: piece.seq });
      else await this.#lost(stroke, say);
    });
    // The failure is told to who sent it.
    stroke.lastPiece = settled.then(
      () => kept,
      () => false,
    );
    return { settled };
  }

  async #end(stroke: OpenStroke, say: Say): Promise<void> {
    const { key } = stroke.header;
    await stroke.lastPiece;
    if (this.#open.get(key) !== stroke) return;
    const ended = await this.#ended(stroke.id);
    switch (ended.outcome) {
      case 'stored':
      case 'duplicate':
        this.#open.delete(key);
        say({ type: 'stored', key, strokeId: ended.strokeId });
        return;
      // Its room or its coach went since it began.
      case 'unknown-room':
      case 'gone':
        return this.#lost(stroke, say);
      default:
        throw endingProblem(ended, stroke.header);
    }
  }

  async #ended(id: string): Promise<Ending> {
    try {
      return await this.#parts.inTurn(() => endLiveStroke(this.#parts.pool, this.#sender, id));
    } catch (error) {
      if (isOutOfSight(error)) return { outcome: 'gone' };
      throw error;
    }
  }

  /** Null for one that is stored, which is said again: a sender need not have read that its beginning was answered so. */
  async #strokeOf(message: JsonObject, say: Say): Promise<OpenStroke | null> {
    const key = keyOf(message);
    if (key === null) throw invalidField('/key', 'Must be the key that the stroke began with.');
    const stroke = this.#open.get(key);
    if (stroke !== undefined) return stroke;
    const strokeId = await storedStroke(this.#parts.db, this.#sender, key);
    if (strokeId !== null) {
      say({ type: 'stored', key, strokeId });
      return null;
    }
    throw new LinkProblem('conflict', 'No stroke of this key was begun on this link.', { key });
  }

  /** Says why a stroke may not be added to any more, once. */
  async #lost(stroke: OpenStroke, say: Say): Promise<void> {
    const { key } = stroke.header;
    if (this.#open.get(key) !== stroke) return;
    this.#open.delete(key);
    const strokeId = await storedStroke(this.#parts.db, this.#sender, key);
    if (strokeId !== null) return say({ type: 'stored', key, strokeId });
    await this.#parts.checkToken();
    const linkId = await linkOf(this.#parts.db, this.#sender.accountId, stroke.id);
    if (linkId !== null && linkId !== this.#sender.linkId) throw new TakenOver(key);
    throw new LinkProblem('not-found', 'There is no such stroke under way any more.', { key });
  }
}
