import { useEffect, useState } from 'preact/hooks';

/** The key of a link, which stands after its `#`; another link followed in the same tab brings another. */
export function useLinkKey(): string {
  const [key, setKey] = useState(() => location.hash.slice(1));
  useEffect(() => {
    const changed = () => setKey(location.hash.slice(1));
    window.addEventListener('hashchange', changed);
    return () => window.removeEventListener('hashchange', changed);
  }, []);
  return key;
}
