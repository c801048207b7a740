import type uPlot from 'uplot';
import { takeGestures, viewOf } from './gestures.ts';
import { type ChartTheme, readTheme } from './theme.ts';
import { type View, zoomed } from './view.ts';

export type PlotLibrary = typeof uPlot;

/** What is drawn, less its size, which follows the place it gets. */
export interface PlotSpec {
  readonly options: Omit<uPlot.Options, 'width' | 'height'>;
  readonly data: uPlot.AlignedData;
}

/** What a picture is drawn by. */
export interface DrawnProps {
  /** Kept by the caller with `useMemo`: a new one draws anew. */
  readonly spec: (theme: ChartTheme, library: PlotLibrary) => PlotSpec;
  readonly heightPx: number;
  /** How the part that is shown is called: with it the picture can be looked at closer. */
  readonly viewText?: (view: View) => string;
  /** A click, without a drag, on the point under the pointer. */
  readonly onPick?: (index: number) => void;
}

/** The place under the pointer: its index, and where it is. */
export interface Pointed {
  readonly index: number;
  readonly at: number;
}

/** What is told to the page of a picture that stands in it. */
export interface Heard {
  readonly pointed: (place: Pointed | null) => void;
  readonly viewed: (view: View, whole: View) => void;
}

/** A picture in its place. */
export interface Drawn {
  readonly show: (view: View) => void;
  readonly grow: (data: uPlot.AlignedData) => void;
  readonly takeAway: () => void;
}

/** Draws one chart into `place`, with the part of it that was shown before. */
export function drawPlot(
  library: PlotLibrary,
  place: HTMLElement,
  props: DrawnProps,
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
