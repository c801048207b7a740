import { useLayoutEffect } from 'preact/hooks';

/** While something stands over the page the focus is there; after it, where it was before, or at the page's heading. */
export function useFocusBack(over: boolean): void {
  useLayoutEffect(() => {
    if (!over) return;
    const before = document.activeElement;
    return () => {
      const stands = before instanceof HTMLElement && before !== document.body && before.isConnected;
      const back = stands ? before : document.querySelector<HTMLElement>('main h1');
      back?.focus({ preventScroll: true });
    };
  }, [over]);
}
