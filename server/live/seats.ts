import { Tally } from '../limits/tally.ts';

/** Open pages of one person, on all devices: more are no person's. */
const MOST_OF_ONE_PERSON = 32;

/** Counts the connections of each person in this process. */
export class Seats {
  readonly #taken = new Tally();

  /** Answers how to leave; null where the person has too many already. */
  take(personId: string): (() => void) | null {
    if (this.#taken.of(personId) >= MOST_OF_ONE_PERSON) return null;
    this.#taken.add(personId, 1);
    return () => this.#taken.add(personId, -1);
  }
}
