import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { useFocusBack } from './useFocusBack.ts';

/** For what appears to be read at once: it takes the focus, and gives it back when it goes. Needs a `tabIndex` of -1. */
export function useTakesFocus<Place extends HTMLElement>(): RefObject<Place | null> {
  const place = useRef<Place>(null);
  useFocusBack(true);
  useEffect(() => place.current?.focus(), []);
  return place;
}
