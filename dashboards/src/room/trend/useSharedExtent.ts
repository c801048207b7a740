import { useCallback, useState } from 'preact/hooks';

/** The least and the greatest value that a chart shows. */
export type Extent = readonly [least: number, most: number];

/** What charts beside each other need to have one scale. */
interface SharedExtent {
  /** From the least to the greatest of what was reported under the keys; null: nothing yet. */
  readonly extent: Extent | null;
  readonly report: (key: string, extent: Extent) => void;
}

/** One extent for all charts, by what each of them reports under its own key. */
export function useSharedExtent(keys: readonly string[]): SharedExtent {
  const [extents, setExtents] = useState<Readonly<Record<string, Extent>>>({});
  const report = useCallback((key: string, extent: Extent) => {
    // What is the same as before draws nothing anew, or each report would lead to the next.
    setExtents((held) =>
      held[key]?.[0] === extent[0] && held[key]?.[1] === extent[1] ? held : { ...held, [key]: extent },
    );
  }, []);
  const reported = keys.flatMap((key) => extents[key] ?? []);
  return {
    extent: reported.length === 0 ? null : [Math.min(...reported), Math.max(...reported)],
    report,
  };
}
