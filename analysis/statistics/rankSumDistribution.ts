/**
 * Chance of every sum of the ranks of a random `size` of them, for ranks that are whole numbers or end in one half
 * (ties): index 2 x sum. Exact, conditional on the ties. Time size x ranks x largest sum.
 *
 * Source: B. Streitberg, J. Röhmel (1986), Exact distributions for permutation and rank tests.
 */
export function rankSumDistribution(ranks: ArrayLike<number>, size: number): Float64Array {
  const doubled = Array.from(ranks, (rank) => Math.round(2 * rank));
  const largest = [...doubled]
    .sort((a, b) => b - a)
    .slice(0, size)
    .reduce((sum, rank) => sum + rank, 0);
  // chances[taken]: of the first t ranks, chance that a random choice took so many and summed to the index.
  const chances = Array.from({ length: size + 1 }, () => new Float64Array(largest + 1));
  chances[0][0] = 1;
  doubled.forEach((rank, seen) => {
    const left = doubled.length - seen;
    for (let taken = Math.min(size, seen + 1); taken >= 0; taken--) {
      const here = chances[taken];
      const keep = (left - (size - taken)) / left;
      const take = taken > 0 ? (size - taken + 1) / left : 0;
      for (let sum = largest; sum >= 0; sum--) {
        const came = taken > 0 && sum >= rank ? take * chances[taken - 1][sum - rank] : 0;
        here[sum] = keep * here[sum] + came;
      }
    }
  });
  return chances[size];
}

/** Chance of every sum of ranks with positive sign (index 2 x sum), each sign being a fair coin's. */
export function signedRankDistribution(ranks: ArrayLike<number>): Float64Array {
  const doubled = Array.from(ranks, (rank) => Math.round(2 * rank));
  const chances = new Float64Array(doubled.reduce((sum, rank) => sum + rank, 0) + 1);
  chances[0] = 1;
  for (const rank of doubled) {
    for (let sum = chances.length - 1; sum >= 0; sum--) {
      chances[sum] = (chances[sum] + (sum >= rank ? chances[sum - rank] : 0)) / 2;
    }
  }
  return chances;
}

/** Chance of an index up to `index`, and from it. */
export function tails(chances: Float64Array, index: number): { lower: number; upper: number } {
  let lower = 0;
  let upper = 0;
  for (let i = 0; i < chances.length; i++) {
    if (i <= index) lower += chances[i];
    if (i >= index) upper += chances[i];
  }
  return { lower: Math.min(1, lower), upper: Math.min(1, upper) };
}
