import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

interface WorksProps<Item> {
  readonly items: readonly Item[];
  /** What stands there while there is none; left out where there always is one. */
  readonly none?: string;
  /** One line, with the item's own key. */
  readonly children: (item: Item, place: number) => ComponentChildren;
}

/** Things one below the other, each with what can be done with it. A line that goes leaves the focus to the list. */
export function Works<Item>({ items, none, children }: WorksProps<Item>) {
  const place = useRef<HTMLDivElement>(null);
  // Looked up before the lines are drawn anew: of one that is gone nobody could tell.
  const hadFocus = place.current?.contains(document.activeElement) === true;
  useLayoutEffect(() => {
    if (hadFocus && !place.current?.contains(document.activeElement)) place.current?.focus();
  });
  return (
    <div ref={place} tabIndex={-1}>
      {items.length === 0 ? <p class="about">{none}</p> : <ul class="works">{items.map(children)}</ul>}
    </div>
  );
}
