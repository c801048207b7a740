import { useEffect, useRef } from 'preact/hooks';

/** Asks anew when `version` has changed since the answer that is shown, but not for the first version. */
export function useRefresh(version: string, reload: () => void): void {
  const seen = useRef(version);
  useEffect(() => {
    if (seen.current !== '' && version !== '' && seen.current !== version) reload();
    seen.current = version;
  }, [version, reload]);
}
