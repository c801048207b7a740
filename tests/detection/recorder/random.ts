/** A seeded source of numbers (Marsaglia's xorshift32 stepped by a Weyl sequence); the same seed gives the same numbers. */
export class Random {
  #state: number;
  #weyl: number;

  constructor(seed: number) {
    this.#state = (Math.imul(seed ^ 0x5bd1e995, 0x2c1b3c6d) >>> 0) | 1;
    this.#weyl = seed >>> 0;
    for (let turn = 0; turn < 12; turn++) this.part();
  }

  /** A source of its own for one purpose, which the others' use does not disturb. */
  branch(name: string): Random {
    let hash = this.#weyl ^ 0x9e3779b9;
    for (let at = 0; at < name.length; at++) hash = Math.imul(hash ^ name.charCodeAt(at), 0x01000193) >>> 0;
    return new Random(Math.imul(hash ^ (hash >>> 15), 0x85ebca6b) >>> 0);
  }

  /** From 0 to below 1. */
  part(): number {
    this.#state ^= this.#state << 13;
    this.#state ^= this.#state >>> 17;
    this.#state ^= this.#state << 5;
    this.#weyl = (this.#weyl + 0x61c88647) >>> 0;
    let mixed = (this.#state + this.#weyl) >>> 0;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x7feb352d);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x846ca68b);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.part();
  }

  /** Between two positive numbers, every doubling as likely as another. */
  scaled(low: number, high: number): number {
    return low * (high / low) ** this.part();
  }

  /** A whole number, both ends included. */
  whole(low: number, high: number): number {
    return low + Math.floor((high - low + 1) * this.part());
  }

  chance(part: number): boolean {
    return this.part() < part;
  }

  /** Of the normal distribution with mean 0 and standard deviation 1 (Box and Muller, 1958). */
  normal(): number {
    return Math.sqrt(-2 * Math.log(1 - this.part())) * Math.cos(2 * Math.PI * this.part());
  }

  pick<Item>(items: readonly Item[]): Item {
    return items[Math.floor(items.length * this.part())];
  }

  /** 1 or -1. */
  sign(): 1 | -1 {
    return this.chance(0.5) ? 1 : -1;
  }
}
