import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { LivePush, Stroke } from '../api/types.ts';
import { type RunningStroke, takeSamples, withoutStroke } from './runningStroke.ts';

interface Watched {
  readonly running: readonly RunningStroke[];
  /** The latest that was seen running and is finished now. */
  readonly finished: Stroke | null;
}

const NOTHING: Watched = { running: [], finished: null };

function take(held: Watched, push: LivePush | null): Watched {
  // The feed begins anew, and tells all there is once more.
  if (push === null) return { ...held, running: [] };
  if (push.type === 'samples')
    return push.strokeId === held.finished?.id ? held : { ...held, running: takeSamples(held.running, push) };
  if (push.type !== 'stroke') return held;
  const running = withoutStroke(held.running, push.stroke.id);
  const wasSeen = running !== held.running || held.finished?.id === push.stroke.id;
  return wasSeen ? { running, finished: push.stroke } : held;
}

/**
 * The strokes of a room that are under way, from what its feed pushes (null: it begins anew). Many pieces may come
 * within one frame: they are shown together.
 */
export function useRunningStrokes(): readonly [Watched, (push: LivePush | null) => void] {
  const [shown, setShown] = useState(NOTHING);
  const latest = useRef(NOTHING);
  const frame = useRef(0);
  const hear = useCallback((push: LivePush | null) => {
    latest.current = take(latest.current, push);
    if (frame.current !== 0) return;
    frame.current = requestAnimationFrame(() => {
      frame.current = 0;
      setShown(latest.current);
    });
  }, []);
  useEffect(() => () => cancelAnimationFrame(frame.current), []);
  return [shown, hear];
}
