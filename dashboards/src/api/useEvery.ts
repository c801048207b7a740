import { useEffect } from 'preact/hooks';

/** Does something at intervals; null: not just now. */
export function useEvery(everyMs: number | null, act: () => void): void {
  useEffect(() => {
    if (everyMs === null) return;
    const timer = setInterval(act, everyMs);
    return () => clearInterval(timer);
  }, [everyMs, act]);
}
