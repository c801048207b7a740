/** Above so many choices a sample of as many stands for them. */
const MOST_PERMUTATIONS = 1000;
/** With hundreds of strokes each arrangement is work: fewer of them, and an error rate of 5 % give or take 1.5. */
const MANY_STROKES = 400;
const PERMUTATIONS_OF_MANY = 200;
const SEED = 20_011;

/**
 * Every choice of `k` of `n` strokes, by their indices (from 0), where there are no more than a thousand; else a seeded sample
 * of them: the same for the same numbers.
 */
export function arrangements(n: number, k: number): number[][] {
  const count = choices(n, k);
  if (count <= MOST_PERMUTATIONS) return everyChoice(n, k);
  const random = multiplicative(SEED);
  const order = Array.from({ length: n }, (_, i) => i);
  return Array.from({ length: n > MANY_STROKES ? PERMUTATIONS_OF_MANY : MOST_PERMUTATIONS }, () => {
    for (let i = 0; i < k; i++) {
      const j = i + Math.floor(random() * (n - i));
      [order[i], order[j]] = [order[j], order[i]];
    }
    return order.slice(0, k);
  });
}

function choices(n: number, k: number): number {
  let count = 1;
  for (let i = 1; i <= k; i++) count = (count * (n - k + i)) / i;
  return Math.round(count);
}

/** Every choice of `k` of the indices from `from` up to, not including, `n`. */
function everyChoice(n: number, k: number, from = 0): number[][] {
  if (k === 0) return [[]];
  const found: number[][] = [];
  for (let first = from; first <= n - k; first++) {
    for (const rest of everyChoice(n, k - 1, first + 1)) found.push([first, ...rest]);
  }
  return found;
}

/** Lehmer's generator with the multiplier of S. K. Park and K. W. Miller (1988). */
function multiplicative(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
