import { useLayoutEffect, useRef } from 'preact/hooks';
import { words } from '../../words.ts';

let first = true;

/** Beyond this a heading would push the answer off a phone's first screen. */
const LONG_TITLE = 60;

/** What the pages that stand are called; the last one names the window. Under a sign-in form another page waits. */
const titles: { readonly text: string }[] = [];

function nameWindow(): void {
  const text = titles.at(-1)?.text;
  if (text !== undefined) document.title = text === words.name ? text : `${text} · ${words.name}`;
}

/** Answers how to take the name back. */
function naming(text: string): () => void {
  const title = { text };
  titles.push(title);
  nameWindow();
  return () => {
    titles.splice(titles.indexOf(title), 1);
    nameWindow();
  };
}

/** The page's one heading. It takes the focus after a move between pages, so that a reader hears where it is. */
export function PageTitle({ text }: { readonly text: string }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => naming(text), [text]);
  useLayoutEffect(() => {
    if (!first) heading.current?.focus({ preventScroll: true });
    first = false;
  }, []);
  return (
    <h1 class={text.length > LONG_TITLE ? 'long' : undefined} ref={heading} tabIndex={-1} dir="auto">
      {text}
    </h1>
  );
}
