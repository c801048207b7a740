import { useEffect, useRef } from 'preact/hooks';

/** Loads on as the reader nears the end of what is there. */
export function useEndInSight(onEnd: () => void) {
  const end = useRef<HTMLDivElement>(null);
  const tell = useRef(onEnd);
  tell.current = onEnd;
  useEffect(() => {
    if (end.current === null) return;
    const watching = new IntersectionObserver(
      (seen) => seen.some((entry) => entry.isIntersecting) && tell.current(),
      { rootMargin: '800px' },
    );
    watching.observe(end.current);
    return () => watching.disconnect();
  });
  return end;
}
