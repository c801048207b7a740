import type { ComponentChildren } from 'preact';
import type { Warning } from '../../api/types.ts';
import { dayText } from '../../format.ts';
import { alongOf } from '../../small/course.ts';
import { words } from '../../words.ts';

interface Placed {
  readonly at: string;
}

/** Where along a picture of these strokes, oldest first, the warning began; null where none came since, or all. */
export function placeOfBegin(strokes: readonly Placed[], { placedAt }: Warning): number | null {
  const first = strokes.findIndex(({ at }) => Date.parse(at) >= Date.parse(placedAt));
  return first <= 0 ? null : alongOf(first, strokes.length);
}

interface FigureProps {
  readonly summary: string;
  readonly strokes: readonly Placed[];
  readonly place: number | null;
  /** Said of a picture with a band. */
  readonly banded?: boolean;
  readonly children: ComponentChildren;
}

/** A picture of strokes in their order, and in words what it shows, of which days, and where the warning began. */
export function EvidenceFigure({ summary, strokes, place, banded = false, children }: FigureProps) {
  const say = words.warnings.picture;
  const [from, to] = [strokes[0], strokes[strokes.length - 1]].map(({ at }) => dayText(at));
  // Where the page was drawn the reader's zone may be unknown: then no day is told.
  const told = [
    summary,
    from === '' ? '' : say.span(from, to),
    banded ? say.band : '',
    place === null ? '' : say.began,
  ];
  return (
    <figure class="evidence">
      {children}
      <figcaption class="about">{told.filter((sentence) => sentence !== '').join(' ')}</figcaption>
    </figure>
  );
}
