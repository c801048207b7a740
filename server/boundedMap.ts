/** A map of at most so many entries: beyond them the one that was set longest ago is forgotten. */
export class BoundedMap<Key, Value> extends Map<Key, Value> {
  readonly #most: number;

  constructor(most: number) {
    super();
    this.#most = most;
  }

  override set(key: Key, value: Value): this {
    // What is set stands last.
    this.delete(key);
    super.set(key, value);
    const [oldest] = this.keys();
    if (this.size > this.#most && oldest !== undefined) this.delete(oldest);
    return this;
  }
}
