const LOOK_EVERY_MS = 250;

/**
 * Acts once the process that started this one has ended. npm that is killed at once can pass nothing on: what it had
 * started would go on unseen, and keep port and data folder from the next start.
 */
export function whenParentEnds(act: () => void): void {
  const parent = process.ppid;
  const timer = setInterval(() => {
    // Whoever loses its parent gets another.
    if (process.ppid === parent) return;
    clearInterval(timer);
    act();
  }, LOOK_EVERY_MS);
  timer.unref();
}
