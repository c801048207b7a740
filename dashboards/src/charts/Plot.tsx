import { useEffect, useRef, useState } from 'preact/hooks';
import type uPlot from 'uplot';
import { Waiting } from '../components/states.tsx';
import { words } from '../words.ts';
import { type ChartTheme, readTheme } from './theme.ts';

export type PlotLibrary = typeof uPlot;

/** What is drawn, less its size, which follows the place it gets. */
export interface PlotSpec {
  readonly options: Omit<uPlot.Options, 'width' | 'height'>;
  readonly data: uPlot.AlignedData;
}

interface PlotProps {
  /** Kept by the caller with `useMemo`: a new one draws anew. */
  readonly spec: (theme: ChartTheme, library: PlotLibrary) => PlotSpec;
  readonly heightPx: number;
  /** What the line below says of the index under the pointer, and of none. */
  readonly readout: (index: number | null) => string;
  /** A click, without a drag, on the point under the pointer. */
  readonly onPick?: (index: number) => void;
}

/** Draws one chart into `place`; answers how to take it away. */
function draw(
  library: PlotLibrary,
  place: HTMLElement,
  props: PlotProps,
  pointed: (index: number | null) => void,
): () => void {
  const { options, data } = props.spec(readTheme(), library);
  const size = () => ({ width: Math.max(200, place.clientWidth), height: props.heightPx });
  const chart = new library({ legend: { show: false }, ...options, ...size() }, data, place);
  chart.hooks.setCursor = [...(chart.hooks.setCursor ?? []), (u) => pointed(u.cursor.idx ?? null)];
  const picked = () => {
    const { idx } = chart.cursor;
    // A finger cannot aim at a point: there the table leads to the strokes.
    if (!matchMedia('(hover: hover)').matches) return;
    if (chart.select.width === 0 && idx !== null && idx !== undefined) props.onPick?.(idx);
  };
  chart.over.addEventListener('click', picked);
  const watcher = new ResizeObserver(() => {
    if (Math.abs(size().width - chart.width) >= 1) chart.setSize(size());
  });
  watcher.observe(place);
  return () => {
    watcher.disconnect();
    chart.destroy();
  };
}

/** The picture alone. Its words and its table belong to `Chart`, which holds it. */
export function Plot(props: PlotProps) {
  const place = useRef<HTMLDivElement>(null);
  const [library, setLibrary] = useState<PlotLibrary | null>(null);
  const [failed, setFailed] = useState(false);
  const [index, setIndex] = useState<number | null>(null);
  const latest = useRef(props);
  latest.current = props;

  useEffect(() => {
    import('./plotLibrary.ts').then(
      (module) => setLibrary(() => module.default),
      () => setFailed(true),
    );
  }, []);

  // Only another picture or height draws anew.
  useEffect(() => {
    if (library === null || place.current === null) return;
    const here = place.current;
    const show = () => draw(library, here, latest.current, setIndex);
    let takeAway = show();
    const scheme = matchMedia('(prefers-color-scheme: dark)');
    const recolour = () => {
      takeAway();
      takeAway = show();
    };
    scheme.addEventListener('change', recolour);
    return () => {
      scheme.removeEventListener('change', recolour);
      takeAway();
    };
  }, [library, props.spec, props.heightPx]);

  if (failed) return <p class="failure">{words.problems.network}</p>;
  return (
    <>
      {library === null && <Waiting />}
      <div ref={place} class="plot" aria-hidden="true" />
      <p class={index === null ? 'readout readout-hint' : 'readout'} aria-hidden="true">
        {props.readout(index)}
      </p>
    </>
  );
}
