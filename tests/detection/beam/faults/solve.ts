/** The size at which `measure` gives `target`, by a few secant steps from 0 (which gives `atZero`) and `guess`. */
export function solveSize(
  measure: (size: number) => number,
  target: number,
  guess: number,
  atZero: number,
  steps = 4,
): number | null {
  let [size, before, valueBefore] = [guess, 0, atZero];
  for (let step = 0; step < steps; step++) {
    const value = measure(size);
    if (Math.abs(value - target) < 0.03 * Math.abs(target - atZero)) return size;
    const slope = (value - valueBefore) / (size - before);
    if (!(slope !== 0 && Number.isFinite(slope))) return null;
    [before, valueBefore] = [size, value];
    size = Math.min(4 * size, Math.max(0.15 * size, size + (target - value) / slope));
  }
  return Math.abs(measure(size) - target) < 0.15 * Math.abs(target - atZero) ? size : null;
}
