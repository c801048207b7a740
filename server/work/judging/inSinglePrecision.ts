/** Single precision has full digits between these. */
const SMALLEST = 1e-37;
const LARGEST = 3e38;

/** A number as a column of Postgres's `real` takes it, which refuses what is too large or next to nothing for it. */
export function inSinglePrecision(value: number | null): number | null {
  if (value === null) return null;
  const magnitude = Math.abs(value);
  if (magnitude < SMALLEST) return 0;
  return magnitude <= LARGEST ? value : null;
}
