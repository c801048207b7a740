import { EventEmitter, once } from 'node:events';
import { gzipSync } from 'node:zlib';
import { encode } from 'cbor2';
import { sendRequest } from './request.ts';

/** The samples of a stroke as it is sent, and as its trace must come back. */
export interface SentStroke {
  readonly key: string;
  readonly roomId: string;
  readonly sides: readonly {
    readonly side: string;
    readonly rateHz: number;
    readonly amps: readonly number[];
  }[];
}

export interface LoadSender {
  readonly loggerToken: string;
  readonly form: 'json' | 'batch' | 'gzip' | 'cbor';
  /** Its `n`th stroke. */
  readonly stroke: (n: number) => SentStroke;
}

const STROKES_AT_ONCE = { json: 1, batch: 5, gzip: 5, cbor: 1 } as const;

/**
 * Senders that keep each stroke until the service says `stored` or `duplicate`, as a logger does: on no answer, or a
 * 503, they send the same again once `whereToSend` tells an address. Each stroke takes a permit, so that a test says
 * how much is sent between two troubles.
 */
export class StrokeLoad {
  /** Ids of what was acknowledged, by sender and then by number. */
  readonly acknowledged: Map<number, string>[];
  readonly #whereToSend: () => Promise<string>;
  readonly #ended: Promise<unknown>;
  #permits = 0;
  #closed = false;
  /** Emits `change` with every change of what the senders or the test wait for. */
  readonly #changes = new EventEmitter();
  /** Answers that no logger can live with. */
  #failure: unknown = null;

  constructor(senders: readonly LoadSender[], whereToSend: () => Promise<string>) {
    this.#whereToSend = whereToSend;
    this.acknowledged = senders.map(() => new Map());
    this.#ended = Promise.all(
      senders.map((sender, i) =>
        this.#run(sender, this.acknowledged[i]).catch((error: unknown) => {
          this.#failure = error;
          this.#tell();
        }),
      ),
    );
  }

  get count(): number {
    return this.acknowledged.reduce((sum, ids) => sum + ids.size, 0);
  }

  allow(strokes: number): void {
    this.#permits += strokes;
    this.#tell();
  }

  /** Waits until so many strokes were acknowledged in all. */
  async reach(count: number): Promise<void> {
    while (this.count < count && this.#failure === null) await once(this.#changes, 'change');
    if (this.#failure !== null) throw this.#failure;
  }

  /** Lets what was allowed come to its end. */
  async finish(): Promise<void> {
    this.#closed = true;
    this.#tell();
    await this.#ended;
    if (this.#failure !== null) throw this.#failure;
  }

  #tell(): void {
    this.#changes.emit('change');
  }

  async #run(sender: LoadSender, ids: Map<number, string>): Promise<void> {
    const most = STROKES_AT_ONCE[sender.form];
    for (let next = 0; ; ) {
      while (this.#permits === 0 && !this.#closed) await once(this.#changes, 'change');
      if (this.#permits === 0) return;
      const count = Math.min(most, this.#permits);
      this.#permits -= count;
      const strokes = Array.from({ length: count }, (_, i) => sender.stroke(next + i));
      const stored = await this.#untilAcknowledged(sender, strokes);
      for (const id of stored) ids.set(next++, id);
      this.#tell();
    }
  }

  async #untilAcknowledged(sender: LoadSender, strokes: readonly SentStroke[]): Promise<string[]> {
    for (;;) {
      const url = await this.#whereToSend();
      const answer = await post(url, sender, strokes);
      if (answer !== null) return answer;
    }
  }
}

/** The ids; null where the same must be sent again. */
async function post(
  url: string,
  { loggerToken, form }: LoadSender,
  strokes: readonly SentStroke[],
): Promise<string[] | null> {
  const headers: Record<string, string> = {};
  if (form === 'gzip') headers['content-encoding'] = 'gzip';
  if (form === 'cbor') headers['content-type'] = 'application/cbor';
  // Nobody answers where the service died: the socket's error says so.
  const answer = await sendRequest(url, 'POST', '/strokes', {
    token: loggerToken,
    headers,
    body: bodyOf(form, strokes),
  }).catch(() => null);
  if (answer === null || answer.status === 503) return null;
  const results: { outcome: string; strokeId: string }[] = answer.body?.results ?? [];
  if (answer.status !== 200 || results.some(({ outcome }) => outcome === 'rejected'))
    throw new Error(`Answered ${answer.status}: ${answer.text}`);
  return results.map(({ strokeId }) => strokeId);
}

function bodyOf(form: LoadSender['form'], strokes: readonly SentStroke[]): string | Uint8Array {
  const sent = strokes.length === 1 ? strokes[0] : strokes;
  if (form === 'gzip') return gzipSync(JSON.stringify(sent));
  if (form === 'json' || form === 'batch') return JSON.stringify(sent);
  const typed = strokes[0].sides.map((side) => ({ ...side, amps: Float64Array.from(side.amps) }));
  return encode({ ...strokes[0], sides: typed });
}
