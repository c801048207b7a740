import type { SpanComparison } from '../../../analysis/compare/compareSpans.ts';
import { PatientTurns } from '../../limits/patientTurns.ts';
import { Tally } from '../../limits/tally.ts';
import { ProblemError, tooMuchAtOnce } from '../../problems.ts';
import type { ToCompareThread } from './compareMessages.ts';
import { type CompareThread, startCompareThread } from './startCompareThread.ts';

/** Under way or waiting: of one person, whose pages ask for one at a time, and of everybody. */
const MOST = { ofOne: 4, ofAll: 40 } as const;

type Compare = (asked: ToCompareThread) => Promise<SpanComparison>;

/**
 * Compares in turn, in a thread of its own, which the first comparison begins: one of two long spans takes seconds of a
 * processor, and whoever asks for many must hold nobody else up.
 */
export class Comparer {
  readonly #turns = new PatientTurns(1);
  readonly #asking = new Tally();
  #thread: CompareThread | null = null;
  #stopped = false;

  /** Does the person's work once it is its turn. Throws the 429 problem where too much of it is asked at once. */
  async inTurn<Result>(personId: string, work: (compare: Compare) => Promise<Result>): Promise<Result> {
    if (this.#asking.of(personId) >= MOST.ofOne || this.#turns.taken >= MOST.ofAll) throw tooMuchAtOnce();
    this.#asking.add(personId, 1);
    try {
      return await this.#turns.run(() => work((asked) => this.#compare(asked)));
    } finally {
      this.#asking.add(personId, -1);
    }
  }

  async stop(): Promise<void> {
    this.#stopped = true;
    await this.#thread?.stop();
  }

  #compare(asked: ToCompareThread): Promise<SpanComparison> {
    if (this.#stopped) throw new ProblemError('unavailable', 'The service is stopping.');
    this.#thread ??= startCompareThread(() => {
      this.#thread = null;
    });
    return this.#thread.compare(asked);
  }
}
