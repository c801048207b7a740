import { useEffect } from 'preact/hooks';

const FIRST_TRY_MS = 3_000;
const LAST_TRY_MS = 30_000;

/** While the service cannot be reached: asks again as soon as the device says that there is a network, and at growing intervals without its word. */
export function useReconnect(unreached: boolean, again: () => void): void {
  useEffect(() => {
    if (!unreached) return;
    let waitMs = FIRST_TRY_MS;
    let timer: ReturnType<typeof setTimeout>;
    const tryAgain = () => {
      again();
      waitMs = Math.min(LAST_TRY_MS, 2 * waitMs);
      timer = setTimeout(tryAgain, waitMs);
    };
    timer = setTimeout(tryAgain, waitMs);
    window.addEventListener('online', again);
    return () => {
      clearTimeout(timer);
      window.removeEventListener('online', again);
    };
  }, [unreached, again]);
}

/** Asks as soon as the device says that the network is gone: what stands on a page would else look like the latest until its next turn. */
export function useWhenNetworkGoes(again: () => void): void {
  useEffect(() => {
    window.addEventListener('offline', again);
    return () => window.removeEventListener('offline', again);
  }, [again]);
}
