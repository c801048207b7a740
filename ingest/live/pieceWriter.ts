import { codeOf, GIVEN_UP } from '../errorCode.ts';
import type { Queries } from '../queries.ts';
import { PIECE_STATEMENT } from './pieceStatement.ts';

/** Of one link to a statement: a flood of one waits for its next turn, not the others for it. */
const MOST_OF_ONE = { pieces: 32, bytes: 256 * 1024 };
const MOST_TOGETHER = { pieces: 1024, bytes: 4 * 1024 * 1024 };
const MOST_TRIES = 4;

/** A piece on its way into the database. `linkId` is the link that it came by. */
export interface PieceToKeep {
  readonly accountId: string;
  readonly strokeId: string;
  readonly linkId: string;
  readonly seq: number;
  readonly side: number | null;
  readonly firstSample: number;
  readonly samples: Buffer;
}

interface Waiting {
  readonly piece: PieceToKeep;
  readonly resolve: (isKept: boolean) => void;
  readonly reject: (error: unknown) => void;
}

/**
 * Keeps the pieces of all links of this process together: while one statement is being committed, what arrives
 * gathers for the next, and each link has its turn in it. One statement at a time, as pieces of a stroke follow each
 * other. Two hundred loggers with ten pieces a second each make some twenty pieces a statement.
 */
export class PieceWriter {
  readonly #openFor: (pieces: readonly PieceToKeep[]) => Queries;
  /** What waits, by link, each in the order in which it came; the link that waits longest is first. */
  readonly #lanes = new Map<string, Waiting[]>();
  #running: Promise<void> | null = null;

  /** `openFor` gives the database in which the senders of these pieces may store them. */
  constructor(openFor: (pieces: readonly PieceToKeep[]) => Queries) {
    this.#openFor = openFor;
  }

  /**
   * Resolves with true once the piece is committed, with false where its stroke may not be added to any more; rejects
   * when the database could not do it. A link's pieces are settled in the order in which they were given.
   */
  keep(piece: PieceToKeep): Promise<boolean> {
    return new Promise((resolve, reject) => {
      const lane = this.#lanes.get(piece.linkId);
      const waiting = { piece, resolve, reject };
      if (lane === undefined) this.#lanes.set(piece.linkId, [waiting]);
      else lane.push(waiting);
      this.#running ??= this.#run();
    });
  }

  /** Resolves once nothing waits. */
  async idle(): Promise<void> {
    while (this.#running !== null) await this.#running;
  }

  async #run(): Promise<void> {
    // After the messages that this turn of the loop reads, so that they go together.
    await new Promise(setImmediate);
    while (this.#lanes.size > 0) await this.#flush(this.#takeGroup());
    this.#running = null;
  }

  #takeGroup(): Waiting[] {
    const group: Waiting[] = [];
    let bytes = 0;
    for (const [linkId, lane] of [...this.#lanes]) {
      const count = turnOf(lane, MOST_TOGETHER.pieces - group.length, MOST_TOGETHER.bytes - bytes);
      if (count === 0 && group.length > 0) break;
      const taken = lane.splice(0, Math.max(1, count));
      for (const { piece } of taken) bytes += piece.samples.length;
      group.push(...taken);
      // Whoever had its turn goes to the end of the row.
      this.#lanes.delete(linkId);
      if (lane.length > 0) this.#lanes.set(linkId, lane);
    }
    return group;
  }

  async #flush(group: readonly Waiting[]): Promise<void> {
    try {
      const pieces = group.map(({ piece }) => piece);
      const kept = await keepPieces(this.#openFor(pieces), pieces);
      for (const { piece, resolve } of group) resolve(kept.has(runOf(piece)));
    } catch (error) {
      for (const { reject } of group) reject(error);
    }
  }
}

/** How many of a lane's pieces go at once. */
function turnOf(lane: readonly Waiting[], piecesLeft: number, bytesLeft: number): number {
  const most = Math.min(MOST_OF_ONE.bytes, bytesLeft);
  let bytes = 0;
  let count = 0;
  for (const { piece } of lane.slice(0, Math.min(MOST_OF_ONE.pieces, piecesLeft))) {
    bytes += piece.samples.length;
    if (bytes > most) break;
    count++;
  }
  return count;
}

const runOf = ({ strokeId, linkId }: PieceToKeep): string => `${strokeId} ${linkId}`;

/** Answers the runs of pieces that were kept. */
async function keepPieces(pool: Queries, pieces: readonly PieceToKeep[]): Promise<ReadonlySet<string>> {
  let from = 0;
  const rows = pieces.map((piece) => {
    from += piece.samples.length;
    return {
      account_id: piece.accountId,
      stroke_id: piece.strokeId,
      link_id: piece.linkId,
      seq: piece.seq,
      side: piece.side,
      first_sample: piece.firstSample,
      from_byte: from - piece.samples.length,
      bytes: piece.samples.length,
    };
  });
  const values = [JSON.stringify(rows), Buffer.concat(pieces.map(({ samples }) => samples))];
  for (let tries = 1; ; tries++) {
    try {
      const { rows: kept } = await pool.query<{ id: string; link_id: string }>({
        name: 'keep-pieces',
        text: PIECE_STATEMENT,
        values,
      });
      return new Set(kept.map(({ id, link_id }) => `${id} ${link_id}`));
    } catch (error) {
      if (tries === MOST_TRIES || !GIVEN_UP.includes(codeOf(error))) throw error;
    }
  }
}
