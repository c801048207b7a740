import { useEffect } from 'preact/hooks';

const FIRST_TRY_MS = 3_000;
const LAST_TRY_MS = 30_000;

/** While there is no network: asks again as soon as the device says that there is one, and at growing intervals without its word. */
export function useReconnect(offline: boolean, again: () => void): void {
  useEffect(() => {
    if (!offline) return;
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
  }, [offline, again]);
}
