import type { ComponentChildren } from 'preact';
import { words } from '../../words.ts';

interface ScrollProps {
  /** What the table is of. */
  readonly of: string;
  readonly children: ComponentChildren;
}

/** A wide table scrolls in a place of its own: the page itself never scrolls sideways. */
export function Scroll({ of, children }: ScrollProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard (WCAG 2.1.1).
    <section class="scroll" tabIndex={0} aria-label={words.tableOf(of)}>
      {children}
    </section>
  );
}
