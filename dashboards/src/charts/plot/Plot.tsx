import { useCallback, useContext, useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type uPlot from 'uplot';
import { useReconnect } from '../../api/useReconnect.ts';
import { Waiting } from '../../components/coming/states.tsx';
import { SessionContext } from '../../session.ts';
import { words } from '../../words.ts';
import { takeGestures, viewOf } from './gestures.ts';
import { type ChartTheme, readTheme } from './theme.ts';
import { isWhole, type View, zoomed } from './view.ts';
import { ZoomBar } from './ZoomBar.tsx';

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
  /** What the line below says of the place under the pointer (its index, and where it is), and of none. */
  readonly readout: (index: number | null, at: number) => string;
  /** How the part that is shown is called: with it the picture can be looked at closer. */
  readonly viewText?: (view: View) => string;
  /** The same lines with more in them: the picture grows without being drawn anew. Kept with `useMemo`. */
  readonly grown?: (library: PlotLibrary) => uPlot.AlignedData;
  /** A click, without a drag, on the point under the pointer. */
  readonly onPick?: (index: number) => void;
  /** The part that is shown has become another; null: the whole. */
  readonly onView?: (view: View | null) => void;
}

interface Pointed {
  readonly index: number;
  readonly at: number;
}

/** Of a picture that is not drawn yet: all buttons but one have nothing to do, and that one does nothing. */
const UNSEEN = { view: { min: 0, max: 1 }, whole: { min: 0, max: 1 } } as const;

/** What is told to the page of a picture that stands in it. */
interface Heard {
  readonly pointed: (place: Pointed | null) => void;
  readonly viewed: (view: View, whole: View) => void;
}

/** A picture in its place. */
interface Drawn {
  readonly show: (view: View) => void;
  readonly grow: (data: uPlot.AlignedData) => void;
  readonly takeAway: () => void;
}

/** Draws one chart into `place`, with the part of it that was shown before. */
function draw(
  library: PlotLibrary,
  place: HTMLElement,
  props: PlotProps,
  before: View | null,
  heard: Heard,
): Drawn {
  const { options, data } = props.spec(readTheme(), library);
  const size = () => ({ width: Math.max(200, place.clientWidth), height: props.heightPx });
  const chart = new library({ legend: { show: false }, ...options, ...size() }, data, place);
  const show = (view: View) => chart.setScale('x', { ...view });
  const pointed = (u: uPlot) => {
    const { idx, left } = u.cursor;
    heard.pointed(idx === null || idx === undefined ? null : { index: idx, at: u.posToVal(left ?? 0, 'x') });
  };
  chart.hooks.setCursor = [...(chart.hooks.setCursor ?? []), pointed];
  // The library sets its scales a moment after it was made: what it shows first is the whole.
  let whole: View | null = null;
  const scaled = (u: uPlot, axis: string) => {
    if (axis !== 'x') return;
    const view = viewOf(u);
    if (whole !== null) return heard.viewed(view, whole);
    whole = view;
    if (before === null) return heard.viewed(whole, whole);
    const closer = zoomed(before, whole, 1);
    // The library forgets what is asked of it while it tells this. Nothing is painted before it is asked.
    queueMicrotask(() => show(closer));
  };
  chart.hooks.setScale = [...(chart.hooks.setScale ?? []), scaled];
  const picked = () => {
    const { idx } = chart.cursor;
    // A finger cannot aim at a point: there the table leads to the strokes.
    if (!matchMedia('(hover: hover)').matches) return;
    if (chart.select.width === 0 && idx !== null && idx !== undefined) props.onPick?.(idx);
  };
  chart.over.addEventListener('click', picked);
  const stopGestures =
    props.viewText === undefined
      ? () => {}
      : takeGestures(chart.over, { whole: () => whole ?? viewOf(chart), view: () => viewOf(chart), show });
  const watcher = new ResizeObserver(() => {
    if (Math.abs(size().width - chart.width) >= 1) chart.setSize(size());
  });
  watcher.observe(place);
  const takeAway = () => {
    watcher.disconnect();
    stopGestures();
    chart.destroy();
  };
  return { show, grow: (more) => chart.setData(more), takeAway };
}

/** The picture alone. Its words and its table belong to `Chart`, which holds it. */
export function Plot(props: PlotProps) {
  const place = useRef<HTMLDivElement>(null);
  const [library, setLibrary] = useState<PlotLibrary | null>(null);
  const [failed, setFailed] = useState(false);
  const [pointed, setPointed] = useState<Pointed | null>(null);
  const [seen, setSeen] = useState<{ view: View; whole: View } | null>(null);
  const drawn = useRef<Drawn | null>(null);
  /** Kept over a new drawing: news must not throw back who is looking closer. */
  const closer = useRef<View | null>(null);
  const { settings } = useContext(SessionContext);
  const latest = useRef(props);
  latest.current = props;

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

  const viewed = useCallback((view: View, whole: View) => {
    setSeen({ view, whole });
    const now = isWhole(view, whole) ? null : view;
    const was = closer.current;
    closer.current = now;
    if (was !== now) latest.current.onView?.(now);
  }, []);

  // Another picture, height or way of writing draws anew, and at once: a page that says something new has its picture too.
  useLayoutEffect(() => {
    if (library === null || place.current === null) return;
    const here = place.current;
    const put = () => {
      drawn.current = draw(library, here, latest.current, closer.current, { pointed: setPointed, viewed });
    };
    put();
    const scheme = matchMedia('(prefers-color-scheme: dark)');
    const recolour = () => {
      drawn.current?.takeAway();
      put();
    };
    scheme.addEventListener('change', recolour);
    return () => {
      scheme.removeEventListener('change', recolour);
      drawn.current?.takeAway();
      drawn.current = null;
    };
  }, [library, props.spec, props.heightPx, viewed, settings]);

  const { grown } = props;
  useEffect(() => {
    if (library !== null && grown !== undefined) drawn.current?.grow(grown(library));
  }, [library, grown]);

  if (failed) return <p class="failure">{words.problems.network}</p>;
  return (
    <>
      {/* The place is there from the first moment: what stands below it does not move away under a finger. */}
      <div style={{ minHeight: `${props.heightPx}px` }}>
        <div ref={place} class="plot" aria-hidden="true" />
        {library === null && <Waiting />}
      </div>
      <p class={pointed === null ? 'readout readout-hint' : 'readout'} aria-hidden="true">
        {props.readout(pointed?.index ?? null, pointed?.at ?? 0)}
      </p>
      {props.viewText !== undefined && (
        <ZoomBar {...(seen ?? UNSEEN)} show={(view) => drawn.current?.show(view)} viewText={props.viewText} />
      )}
    </>
  );
}
