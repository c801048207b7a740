const TO_UNIT = 1 / 4294967296;

function rotateLeft(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by));
}

/**
 * A seeded source of numbers: xoshiro128** (Blackman and Vigna, "Scrambled linear pseudorandom number generators",
 * ACM TOMS 47, 2021), its state filled by splitmix32 (Steele, Lea and Flood 2014, with the 32-bit finaliser of
 * MurmurHash3). The same seed gives the same numbers on every machine.
 */
export class Random {
  #s0: number;
  #s1: number;
  #s2: number;
  #s3: number;

  constructor(seed: number) {
    let counter = seed | 0;
    const splitmix = (): number => {
      counter = (counter + 0x9e3779b9) | 0;
      let word = counter ^ (counter >>> 16);
      word = Math.imul(word, 0x85ebca6b);
      word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35);
      return word ^ (word >>> 16);
    };
    this.#s0 = splitmix();
    this.#s1 = splitmix();
    this.#s2 = splitmix();
    this.#s3 = splitmix();
  }

  /** Goes on from a state of four words, not all 0. */
  static fromState(s0: number, s1: number, s2: number, s3: number): Random {
    const random = new Random(0);
    random.#s0 = s0;
    random.#s1 = s1;
    random.#s2 = s2;
    random.#s3 = s3;
    return random;
  }

  /** 32 bits, 0 to 2^32 - 1. */
  bits(): number {
    const result = Math.imul(rotateLeft(Math.imul(this.#s1, 5), 7), 9) >>> 0;
    const shifted = this.#s1 << 9;
    this.#s2 ^= this.#s0;
    this.#s3 ^= this.#s1;
    this.#s1 ^= this.#s2;
    this.#s0 ^= this.#s3;
    this.#s2 ^= shifted;
    this.#s3 = rotateLeft(this.#s3, 11);
    return result;
  }

  /** From `low` (included) to `high` (excluded). */
  uniform(low: number, high: number): number {
    return low + (high - low) * this.bits() * TO_UNIT;
  }

  /** Uniform in the logarithm; both ends above 0. */
  logUniform(low: number, high: number): number {
    return Math.exp(this.uniform(Math.log(low), Math.log(high)));
  }

  /** A whole number from `low` to `high`, both included. */
  integer(low: number, high: number): number {
    return low + Math.floor(this.bits() * TO_UNIT * (high - low + 1));
  }

  chance(probability: number): boolean {
    return this.bits() * TO_UNIT < probability;
  }

  pick<Item>(items: readonly Item[]): Item {
    return items[this.integer(0, items.length - 1)];
  }

  /** Normal deviate (Box and Muller 1958; one of the pair is let go, so that every call costs two draws). */
  normal(mean: number, deviation: number): number {
    const radius = Math.sqrt(-2 * Math.log((this.bits() + 1) * TO_UNIT));
    return mean + deviation * radius * Math.cos(2 * Math.PI * this.bits() * TO_UNIT);
  }

  /** A source of its own: what is drawn from it does not shift what comes after here. */
  fork(): Random {
    return new Random(this.bits());
  }
}
