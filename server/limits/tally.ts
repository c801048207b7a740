/** How much each of many has of something, such as requests under way. Who has none is not remembered. */
export class Tally {
  readonly #counts = new Map<string, number>();

  of(name: string): number {
    return this.#counts.get(name) ?? 0;
  }

  add(name: string, more: number): void {
    const count = this.of(name) + more;
    if (count > 0) this.#counts.set(name, count);
    else this.#counts.delete(name);
  }
}
