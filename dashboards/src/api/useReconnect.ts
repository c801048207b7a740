import { useEffect } from 'preact/hooks';

const TRY_AGAIN_MS = 15_000;

/** While there is no network: asks again as soon as the device says that there is one, and every while without its word. */
export function useReconnect(offline: boolean, again: () => void): void {
  useEffect(() => {
    if (!offline) return;
    const timer = setInterval(again, TRY_AGAIN_MS);
    window.addEventListener('online', again);
    return () => {
      clearInterval(timer);
      window.removeEventListener('online', again);
    };
  }, [offline, again]);
}
