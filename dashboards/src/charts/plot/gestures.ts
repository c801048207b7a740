import type uPlot from 'uplot';
import { moved, type View, zoomed } from './view.ts';

interface Gestures {
  readonly whole: () => View;
  readonly view: () => View;
  readonly show: (view: View) => void;
}

/**
 * Two fingers widen and narrow what is shown and move it along; one finger moves it once it is narrower than the
 * whole. Upward and downward the page scrolls as everywhere (`touch-action` in the style sheet). Answers how to stop.
 */
export function takeGestures(over: HTMLElement, { whole, view, show }: Gestures): () => void {
  const fingers = new Map<number, number>();
  const placeOf = (clientX: number) => {
    const box = over.getBoundingClientRect();
    const { min, max } = view();
    return min + ((clientX - box.left) / box.width) * (max - min);
  };
  const down = (event: PointerEvent) => {
    if (event.pointerType !== 'touch') return;
    fingers.set(event.pointerId, event.clientX);
    if (fingers.size > 1) over.setPointerCapture(event.pointerId);
  };
  const move = (event: PointerEvent) => {
    const before = fingers.get(event.pointerId);
    if (before === undefined) return;
    const others = [...fingers].filter(([id]) => id !== event.pointerId).map(([, x]) => x);
    fingers.set(event.pointerId, event.clientX);
    if (others.length === 0) {
      show(moved(view(), whole(), (before - event.clientX) / over.clientWidth));
      return;
    }
    const [other] = others;
    const apart = Math.max(8, Math.abs(event.clientX - other));
    const apartBefore = Math.max(8, Math.abs(before - other));
    show(zoomed(view(), whole(), apartBefore / apart, placeOf(other)));
  };
  const up = (event: PointerEvent) => fingers.delete(event.pointerId);
  over.addEventListener('pointerdown', down);
  over.addEventListener('pointermove', move);
  over.addEventListener('pointerup', up);
  over.addEventListener('pointercancel', up);
  return () => {
    over.removeEventListener('pointerdown', down);
    over.removeEventListener('pointermove', move);
    over.removeEventListener('pointerup', up);
    over.removeEventListener('pointercancel', up);
  };
}

/** What the picture shows along its axis just now. */
export function viewOf(chart: uPlot): View {
  const { min, max } = chart.scales.x;
  return { min: min ?? 0, max: max ?? 1 };
}
