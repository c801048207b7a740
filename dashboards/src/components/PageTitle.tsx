import { useEffect, useRef } from 'preact/hooks';
import { words } from '../words.ts';

let first = true;

/** The page's one heading. It takes the focus after a move between pages, so that a reader hears where it is. */
export function PageTitle({ text }: { readonly text: string }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = text === words.name ? text : `${text} · ${words.name}`;
  }, [text]);
  useEffect(() => {
    if (!first) heading.current?.focus({ preventScroll: true });
    first = false;
  }, []);
  return (
    <h1 ref={heading} tabIndex={-1} dir="auto">
      {text}
    </h1>
  );
}
