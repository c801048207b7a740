/**
 * Entropy of the first differences of many sides together, bits a sample (Shannon, 1948), by their counts. Together,
 * as one side of some hundred samples has too few of them to tell its own.
 */
export function differenceEntropy(sides: readonly (readonly number[])[]): number {
  const counts = new Map<number, number>();
  let total = 0;
  for (const integers of sides) {
    for (let i = 1; i < integers.length; i++) {
      const difference = integers[i] - integers[i - 1];
      counts.set(difference, (counts.get(difference) ?? 0) + 1);
      total++;
    }
  }
  let bits = 0;
  for (const count of counts.values()) bits -= (count / total) * Math.log2(count / total);
  return bits;
}
