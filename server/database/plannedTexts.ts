/** For each connection Postgres keeps so many plans at most. */
const MOST_TEXTS = 200;
/** Of texts that were asked once, among which those are looked for that come again. */
const MOST_ONCE = 1000;

/**
 * The statements worth planning once and not every time, by the names under which connections keep their plans. Only
 * what is asked again gets one: texts that differ from time to time, as one with a place for each of many rows, must
 * not fill every connection.
 */
export class PlannedTexts {
  readonly #names = new Map<string, string>();
  readonly #once = new Set<string>();
  #given = 0;

  /** undefined: to be planned for this time only. */
  nameOf(text: string): string | undefined {
    const name = this.#names.get(text);
    if (name !== undefined || this.#names.size === MOST_TEXTS) return name;
    if (!this.#once.delete(text)) {
      if (this.#once.size === MOST_ONCE) this.#once.clear();
      this.#once.add(text);
      return undefined;
    }
    const given = `planned ${this.#given++}`;
    this.#names.set(text, given);
    return given;
  }

  /** The plans that connections have do not fit the tables any more: all are made anew under other names. */
  forget(): void {
    this.#names.clear();
  }
}
