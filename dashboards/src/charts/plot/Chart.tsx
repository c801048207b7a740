import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import { Scroll } from '../../components/told/Scroll.tsx';
import { words } from '../../words.ts';

interface ChartProps {
  /** 2: a section of the page; 3: one of several pictures in a section. */
  readonly level?: 2 | 3;
  readonly title: string;
  /** What the picture shows, in sentences, for those who do not see it and those in a hurry; a side a line. */
  readonly summary: string;
  /** What changes while it is watched: there the words stand below it. */
  readonly pictureFirst?: boolean;
  readonly keys: ComponentChildren;
  readonly picture: ComponentChildren;
  readonly table: ComponentChildren;
}

/** A picture never stands alone: its title, its finding in words, its key, and the same as a table. */
export function Chart({ level = 3, title, summary, pictureFirst = false, keys, picture, table }: ChartProps) {
  const id = useId();
  const told = <p class="summary">{summary}</p>;
  const Heading = level === 2 ? 'h2' : 'h3';
  return (
    <figure class="chart" aria-labelledby={id}>
      <figcaption>
        <Heading id={id} dir="auto">
          {title}
        </Heading>
        {!pictureFirst && told}
      </figcaption>
      {pictureFirst && picture}
      {pictureFirst && told}
      <ul class="keys">{keys}</ul>
      {!pictureFirst && picture}
      <details>
        <summary>{words.trend.table}</summary>
        <Scroll of={title}>{table}</Scroll>
      </details>
    </figure>
  );
}
