import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

/** Leads to the first field that is at fault, after each of `tries` attempts to send a form. */
export function useFirstProblem(tries: number): RefObject<HTMLFormElement | null> {
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    if (tries > 0) form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [tries]);
  return form;
}
