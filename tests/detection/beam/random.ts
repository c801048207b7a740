/** A seeded source of chance: the same seed always gives the same numbers. */
export class Random {
  private state: number;
  private spare: number | null = null;

  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** Another source that depends on this one's seed and `salt` alone, not on what has been drawn. */
  static of(seed: number, salt: number): Random {
    const mixed = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) ^ Math.imul(salt + 0x7f4a7c15, 0xc2b2ae35);
    const random = new Random(mixed);
    for (let i = 0; i < 4; i++) random.unit();
    return random;
  }

  /** Uniform in 0 to 1, Mulberry32. */
  unit(): number {
    this.state = (this.state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(this.state ^ (this.state >>> 15), 1 | this.state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  }

  between(least: number, most: number): number {
    return least + (most - least) * this.unit();
  }

  /** Uniform on a logarithmic scale. */
  betweenFactors(least: number, most: number): number {
    return least * (most / least) ** this.unit();
  }

  /** Whole, both ends included. */
  whole(least: number, most: number): number {
    return least + Math.floor(this.unit() * (most - least + 1));
  }

  chance(probability: number): boolean {
    return this.unit() < probability;
  }

  pick<Item>(items: readonly Item[]): Item {
    return items[this.whole(0, items.length - 1)];
  }

  /** Mean 0, standard deviation 1, by the polar method. */
  normal(): number {
    if (this.spare !== null) {
      const spare = this.spare;
      this.spare = null;
      return spare;
    }
    for (;;) {
      const a = 2 * this.unit() - 1;
      const b = 2 * this.unit() - 1;
      const square = a * a + b * b;
      if (square >= 1 || square === 0) continue;
      const factor = Math.sqrt((-2 * Math.log(square)) / square);
      this.spare = b * factor;
      return a * factor;
    }
  }
}
