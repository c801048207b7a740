const FIRST_MS = 60_000;
const LONGEST_MS = 10 * 3_600_000;

/** What nobody took within this is given up. */
export const GIVE_UP_AFTER_MS = 3 * 86_400_000;

/** After so many attempts in a row came to nothing, the next is one, four, sixteen... minutes away, at most ten hours. */
export function backOffMs(failures: number): number {
  return Math.min(LONGEST_MS, FIRST_MS * 4 ** Math.max(0, failures - 1));
}
