import { useEffect, useId, useState } from 'preact/hooks';

/** How old what is shown is, and why: told once for the whole page. */
export interface Freshness {
  /** When the oldest of it was answered, milliseconds since 1970. */
  readonly atMs: number;
  /** No network; else a newer answer is on its way. */
  readonly offline: boolean;
}

const shown = new Map<string, Freshness>();
const listeners = new Set<() => void>();

function tell(): void {
  for (const listener of listeners) listener();
}

/** Notes that something on the page is from before; null: it is the latest. */
export function useNoteFreshness(atMs: number | null, offline: boolean): void {
  const id = useId();
  useEffect(() => {
    if (atMs === null) return;
    shown.set(id, { atMs, offline });
    tell();
    return () => {
      shown.delete(id);
      tell();
    };
  }, [id, atMs, offline]);
}

/** Of all that is shown; null while everything is the latest. */
export function useFreshness(): Freshness | null {
  const [held, setHeld] = useState<Freshness | null>(null);
  useEffect(() => {
    const look = () => {
      const all = [...shown.values()];
      setHeld(
        all.length === 0
          ? null
          : { atMs: Math.min(...all.map((each) => each.atMs)), offline: all.some((each) => each.offline) },
      );
    };
    look();
    listeners.add(look);
    return () => {
      listeners.delete(look);
    };
  }, []);
  return held;
}
