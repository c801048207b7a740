import type { RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { useFocusBack } from './useFocusBack.ts';

/**
 * For what appears to be read at once: it takes the focus in the moment in which it is drawn, so that no key that is
 * pressed meanwhile goes elsewhere, and gives it back when it goes. Needs a `tabIndex` of -1.
 */
export function useTakesFocus<Place extends HTMLElement>(): RefObject<Place | null> {
  const place = useRef<Place>(null);
  useFocusBack(true);
  useLayoutEffect(() => place.current?.focus(), []);
  return place;
}
