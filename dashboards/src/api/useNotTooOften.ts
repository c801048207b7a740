import { useEffect, useRef } from 'preact/hooks';
import { notTooOften } from './notTooOften.ts';

/** News that come closer together are told as one: a lot on a Friday evening, a file of a hundred strokes. */
const APART_MS = 1_000;

/** Calls `act`, as it is at that moment, not too often. */
export function useNotTooOften<Said extends unknown[]>(
  act: (...said: Said) => void,
): (...said: Said) => void {
  const latest = useRef(act);
  latest.current = act;
  const { tell, stop } = useRef(notTooOften((...said: Said) => latest.current(...said), APART_MS)).current;
  useEffect(() => stop, [stop]);
  return tell;
}
