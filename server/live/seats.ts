/** Open pages of one person, on all devices: more are no person's. */
const MOST_OF_ONE_PERSON = 32;

/** Counts the connections of each person in this process. */
export class Seats {
  readonly #taken = new Map<string, number>();

  /** Answers how to leave; null where the person has too many already. */
  take(personId: string): (() => void) | null {
    const taken = this.#taken.get(personId) ?? 0;
    if (taken >= MOST_OF_ONE_PERSON) return null;
    this.#taken.set(personId, taken + 1);
    return () => {
      const left = (this.#taken.get(personId) ?? 1) - 1;
      if (left > 0) this.#taken.set(personId, left);
      else this.#taken.delete(personId);
    };
  }
}
