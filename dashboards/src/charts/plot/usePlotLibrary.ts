import { useCallback, useEffect, useState } from 'preact/hooks';
import { useReconnect } from '../../api/useReconnect.ts';
import type { PlotLibrary } from './drawPlot.ts';

interface PlotLibraryLoad {
  /** null: it is on its way, or has failed to come. */
  readonly library: PlotLibrary | null;
  readonly failed: boolean;
}

/** The library that draws, fetched with the first picture, and anew once there is a network again. */
export function usePlotLibrary(): PlotLibraryLoad {
  const [library, setLibrary] = useState<PlotLibrary | null>(null);
  const [failed, setFailed] = useState(false);
  const [tries, setTries] = useState(0);
  useReconnect(
    failed,
    useCallback(() => setTries((n) => n + 1), []),
  );
  // A try more fetches it anew.
  useEffect(() => {
    import('./plotLibrary.ts').then(
      (module) => {
        setLibrary(() => module.default);
        setFailed(false);
      },
      () => setFailed(true),
    );
  }, [tries]);
  return { library, failed };
}
