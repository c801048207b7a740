import { useLayoutEffect, useState } from 'preact/hooks';
import { agoText } from '../../format.ts';

const MINUTE_MS = 60_000;

/** All of a page that grow older, on one clock. */
const growing = new Set<() => void>();
let clock: ReturnType<typeof setInterval> | undefined;

/** Calls each minute from here on; answers how to stop. */
function eachMinute(grow: () => void): () => void {
  growing.add(grow);
  clock ??= setInterval(() => {
    for (const each of growing) each();
  }, MINUTE_MS);
  return () => {
    growing.delete(grow);
    if (growing.size > 0) return;
    clearInterval(clock);
    clock = undefined;
  };
}

/** How long ago a moment was, told anew while a page stays open. */
export function useAgo(at: string | number): string {
  const [, setTold] = useState('');
  // From the moment it is seen: what is put off until a frame is drawn would miss a minute that passes before.
  // Drawn anew only where the words have become others.
  useLayoutEffect(() => eachMinute(() => setTold(agoText(at))), [at]);
  return agoText(at);
}
