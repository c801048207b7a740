import type { LearnRoom, Measurer } from './measurer.ts';
import type { Queries } from './queries.ts';
import { type StoreOutcome, storeStrokes } from './storeStrokes.ts';
import type { StrokeToStore } from './strokeToStore.ts';
import { isUnavailable } from './unavailable.ts';

/** Strokes to a statement: beyond this a larger one gains nothing and makes the others wait. */
const MOST_STROKES = 128;
const MOST_BYTES = 8 * 1024 * 1024;
/** One on its way while the next one gathers; more would gather less. */
const MOST_AT_ONCE = 2;
/**
 * While the bodies of other requests are being read, a group waits for them so long at the most. A statement of
 * sixteen strokes costs a fifth of sixteen statements, on both ends.
 */
const GATHER_MS = 20;

interface Waiting {
  readonly strokes: readonly StrokeToStore[];
  readonly resolve: (outcomes: StoreOutcome[]) => void;
  readonly reject: (error: unknown) => void;
}

/**
 * Stores the strokes of concurrent requests together: while one statement is being committed, what arrives gathers
 * for the next. Each request is answered after the commit of its own strokes. On a quiet line nothing waits. Measured:
 * six times the strokes a second of one INSERT each.
 */
export class GroupCommit {
  readonly #openFor: (strokes: readonly StrokeToStore[]) => Queries;
  readonly #measurer: Measurer | null;
  readonly #waiting: Waiting[] = [];
  #underWay = 0;
  #scheduled = false;
  #expected = 0;

  /**
   * `openFor` gives the database in which the senders of these strokes may store them; a `measurer` measures what it
   * can of them first.
   */
  constructor(openFor: (strokes: readonly StrokeToStore[]) => Queries, measurer: Measurer | null = null) {
    this.#openFor = openFor;
    this.#measurer = measurer;
  }

  /** Says that strokes may follow, as a request's body is being read; the answer is to be called when it was. */
  expect(): () => void {
    this.#expected++;
    return () => {
      this.#expected--;
    };
  }

  /** Resolves once all of them are committed or refused; rejects when the database could not do it. */
  async store(strokes: readonly StrokeToStore[]): Promise<StoreOutcome[]> {
    return this.#storeMeasured(await this.#measured(strokes));
  }

  async #measured(strokes: readonly StrokeToStore[]): Promise<readonly StrokeToStore[]> {
    if (this.#measurer === null) return strokes;
    const measured = this.expect();
    try {
      return await this.#measurer.measure(strokes);
    } finally {
      measured();
    }
  }

  #storeMeasured(strokes: readonly StrokeToStore[]): Promise<StoreOutcome[]> {
    return new Promise((resolve, reject) => {
      this.#waiting.push({ strokes, resolve, reject });
      this.#schedule();
    });
  }

  #schedule(): void {
    if (this.#scheduled || this.#underWay >= MOST_AT_ONCE || this.#waiting.length === 0) return;
    this.#scheduled = true;
    const latest = performance.now() + GATHER_MS;
    const sendWhenAllAreThere = (): void => {
      if (this.#expected > 0 && performance.now() < latest) setTimeout(sendWhenAllAreThere, 1);
      else this.#send();
    };
    // After the requests that this turn of the loop reads, so that they go together.
    setImmediate(sendWhenAllAreThere);
  }

  #send(): void {
    this.#scheduled = false;
    const group = this.#takeGroup();
    this.#underWay++;
    void this.#flush(group).finally(() => {
      this.#underWay--;
      this.#schedule();
    });
    this.#schedule();
  }

  /** At least one request, and as many more as fit. */
  #takeGroup(): Waiting[] {
    const group: Waiting[] = [];
    let count = 0;
    let bytes = 0;
    while (this.#waiting.length > 0) {
      const { strokes } = this.#waiting[0];
      count += strokes.length;
      for (const { trace } of strokes) bytes += trace.length;
      if (group.length > 0 && (count > MOST_STROKES || bytes > MOST_BYTES)) break;
      group.push(...this.#waiting.splice(0, 1));
    }
    return group;
  }

  async #flush(group: readonly Waiting[]): Promise<void> {
    try {
      const all = group.flatMap(({ strokes }) => strokes);
      const learn: LearnRoom = (room, by) => this.#measurer?.learn(room, by);
      const outcomes = await storeStrokes(this.#openFor(all), all, learn);
      let from = 0;
      for (const { strokes, resolve } of group) {
        resolve(outcomes.slice(from, from + strokes.length));
        from += strokes.length;
      }
    } catch (error) {
      // Where the database can do nothing, each by itself would only wait for that once more.
      if (group.length === 1 || isUnavailable(error)) for (const one of group) one.reject(error);
      // One request's trouble must not be the others': each is tried by itself.
      else for (const one of group) await this.#flush([one]);
    }
  }
}
