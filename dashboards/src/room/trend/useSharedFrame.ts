import { useCallback, useMemo, useState } from 'preact/hooks';
import { frameOfAll, isSameFrame, type TrendFrame } from '../../charts/trend/trendFrame.ts';

/** What charts beside each other need to show the same values over the same days. */
interface SharedFrame {
  /** It holds all that was reported under the keys, and is the very same while that is; null: nothing yet. */
  readonly frame: TrendFrame | null;
  readonly report: (key: string, frame: TrendFrame) => void;
}

/** One frame for all charts, by what each of them reports under its own key. */
export function useSharedFrame(keys: readonly string[]): SharedFrame {
  const [frames, setFrames] = useState<Readonly<Record<string, TrendFrame>>>({});
  const report = useCallback((key: string, frame: TrendFrame) => {
    // What is the same as before draws nothing anew, or each report would lead to the next.
    setFrames((held) => (key in held && isSameFrame(held[key], frame) ? held : { ...held, [key]: frame }));
  }, []);
  const asked = JSON.stringify(keys);
  const frame = useMemo(() => frameOfAll(keys.flatMap((key) => frames[key] ?? [])), [frames, asked]);
  return { frame, report };
}
