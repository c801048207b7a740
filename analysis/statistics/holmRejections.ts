/**
 * Which of several hypotheses are rejected so that one that is true is among them in no more than the error rate's part of all such
 * sets, however they depend on each other: the surest has to hold against all of them, the next against those that are left.
 * Answers the level at which each was rejected, null where it was not.
 *
 * `isRejected`: whether the test of one hypothesis (by its index, from 0) by itself rejects it at a level.
 *
 * Source: S. Holm (1979), A simple sequentially rejective multiple test procedure.
 */
export function holmRejections(
  count: number,
  errorRate: number,
  isRejected: (index: number, level: number) => boolean,
): (number | null)[] {
  const rejectedAt: (number | null)[] = Array.from({ length: count }, () => null);
  for (;;) {
    const left = rejectedAt.flatMap((at, index) => (at === null ? [index] : []));
    const level = errorRate / left.length;
    const rejected = left.filter((index) => isRejected(index, level));
    if (rejected.length === 0) return rejectedAt;
    for (const index of rejected) rejectedAt[index] = level;
  }
}
