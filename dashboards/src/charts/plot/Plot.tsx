import { useCallback, useContext, useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type uPlot from 'uplot';
import { Waiting } from '../../components/coming/states.tsx';
import { SessionContext } from '../../session.ts';
import { words } from '../../words.ts';
import { type Drawn, type DrawnProps, drawPlot, type PlotLibrary, type Pointed } from './drawPlot.ts';
import { usePlotLibrary } from './usePlotLibrary.ts';
import { isWhole, type View } from './view.ts';
import { ZoomBar } from './ZoomBar.tsx';

interface PlotProps extends DrawnProps {
  /** What the line below says of the place under the pointer (its index, and where it is), and of none. */
  readonly readout: (index: number | null, at: number) => string;
  /** The same lines with more in them: the picture grows without being drawn anew. Kept with `useMemo`. */
  readonly grown?: (library: PlotLibrary) => uPlot.AlignedData;
  /** The part that is shown has become another; null: the whole. */
  readonly onView?: (view: View | null) => void;
}

/** Of a picture that is not drawn yet: all buttons but one have nothing to do, and that one does nothing. */
const UNSEEN = { view: { min: 0, max: 1 }, whole: { min: 0, max: 1 } } as const;

/** The picture alone. Its words and its table belong to `Chart`, which holds it. */
export function Plot(props: PlotProps) {
  const place = useRef<HTMLDivElement>(null);
  const { library, failed } = usePlotLibrary();
  const [pointed, setPointed] = useState<Pointed | null>(null);
  const [seen, setSeen] = useState<{ view: View; whole: View } | null>(null);
  const drawn = useRef<Drawn | null>(null);
  /** Kept over a new drawing: news must not throw back who is looking closer. */
  const closer = useRef<View | null>(null);
  const { settings } = useContext(SessionContext);
  const latest = useRef(props);
  latest.current = props;

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
      drawn.current = drawPlot(library, here, latest.current, closer.current, {
        pointed: setPointed,
        viewed,
      });
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
