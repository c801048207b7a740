import type { RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { CallProblem } from '../../api/client.ts';

/** Leads to the first field that is at fault, after each of `tries` attempts to send a form, and once the service refused it. */
export function useFirstProblem(
  tries: number,
  refused: CallProblem | null,
): RefObject<HTMLFormElement | null> {
  const form = useRef<HTMLFormElement>(null);
  useLayoutEffect(() => {
    if (tries > 0) form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [tries, refused]);
  return form;
}
