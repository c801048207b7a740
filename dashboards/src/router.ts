import { useEffect, useState } from 'preact/hooks';

/** The whole router: real addresses, no page load between them. */
const MOVED = 'slideload:moved';

/** Where the page is: by the browser's address, unless it is drawn elsewhere. */
export type PageAddress = Pick<Location, 'pathname' | 'search'>;
let elsewhere: PageAddress | null = null;

/** From here on a page is drawn as at this address; null: where the browser is. */
export function drawAt(address: PageAddress | null): void {
  elsewhere = address;
}

/** Matches `/rooms/:id` against a path; the named parts, or null where it does not fit. */
export function matchPath(pattern: string, path: string): Record<string, string> | null {
  const wanted = pattern.split('/');
  const given = path.replace(/(?<=[^/])\/+$/, '').split('/');
  if (wanted.length !== given.length) return null;
  const parts: Record<string, string> = {};
  for (const [i, want] of wanted.entries()) {
    if (want.startsWith(':')) parts[want.slice(1)] = decode(given[i]);
    else if (want !== given[i]) return null;
  }
  return parts;
}

/** A path that is not well encoded is taken as it stands: it will simply not be found. */
function decode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

export function navigate(to: string): void {
  history.pushState(null, '', to);
  window.scrollTo(0, 0);
  window.dispatchEvent(new Event(MOVED));
}

/** The same page in another state: no step back, and the reader stays where it is. */
export function replaceAddress(to: string): void {
  history.replaceState(null, '', to);
  window.dispatchEvent(new Event(MOVED));
}

function useLocation(part: 'pathname' | 'search'): string {
  const [held, setHeld] = useState(() => (elsewhere ?? location)[part]);
  useEffect(() => {
    const moved = () => setHeld(location[part]);
    window.addEventListener('popstate', moved);
    window.addEventListener(MOVED, moved);
    return () => {
      window.removeEventListener('popstate', moved);
      window.removeEventListener(MOVED, moved);
    };
  }, [part]);
  return held;
}

export const usePath = (): string => useLocation('pathname');

/** What follows the path in the address, with its question mark. */
export const useSearch = (): string => useLocation('search');

/** Follows links to our own pages without a page load; every other click is left to the browser. */
export function useLinks(): void {
  useEffect(() => {
    const clicked = (event: MouseEvent) => {
      const plain = event.button === 0 && !(event.metaKey || event.ctrlKey || event.shiftKey || event.altKey);
      if (event.defaultPrevented || !plain || !(event.target instanceof Element)) return;
      const link = event.target.closest('a');
      if (link === null || link.target !== '' || link.hasAttribute('download')) return;
      if (link.origin !== location.origin || link.pathname.startsWith('/api/')) return;
      // A place of this very page.
      if (link.hash !== '' && link.pathname === location.pathname) return;
      event.preventDefault();
      if (link.href !== location.href) navigate(link.pathname + link.search + link.hash);
    };
    document.addEventListener('click', clicked);
    return () => document.removeEventListener('click', clicked);
  }, []);
}
