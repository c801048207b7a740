import { useEffect, useState } from 'preact/hooks';

/** Drawn in one go, more rows than these hold up the scrolling of a slow phone. */
const ROWS_A_FRAME = 5;

/**
 * The items of a list that grows at its end, a few more with each frame; its first page comes whole. What the reader
 * does between two frames is answered between them.
 */
export function useGradually<Item>(items: readonly Item[], firstPage: number): readonly Item[] {
  const [count, setCount] = useState(items.length);
  const there = items.length;
  useEffect(() => {
    // Another list: it begins anew.
    if (count > there) setCount(there);
    if (count >= there) return;
    const frame = requestAnimationFrame(() =>
      setCount(Math.min(there, Math.max(firstPage, count + ROWS_A_FRAME))),
    );
    return () => cancelAnimationFrame(frame);
  }, [count, there, firstPage]);
  const drawn = Math.max(count, firstPage);
  return drawn >= there ? items : items.slice(0, drawn);
}
