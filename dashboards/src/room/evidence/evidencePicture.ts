import type { Direction, Warning, WarningKind } from '../../api/types.ts';

/** What shows best what a kind of warning has seen: a measure's course, the supply's, or where along the travel it is. */
type Shows =
  | { readonly course: string; readonly asParts: boolean; readonly ofSide: boolean }
  | 'supply'
  | 'travel';

const SHOWS: Record<WarningKind, Shows> = {
  'rising-draw': { course: 'runningAmps', asParts: true, ofSide: true },
  'draw-rebound': { course: 'runningAmps', asParts: true, ofSide: true },
  'heavy-room': { course: 'runningAmps', asParts: false, ofSide: true },
  'uneven-sides': { course: 'share', asParts: false, ofSide: true },
  'late-side': { course: 'lagS', asParts: false, ofSide: false },
  'short-travel': { course: 'durationS', asParts: true, ofSide: true },
  'weak-supply': 'supply',
  'stall-spike': 'travel',
  'dropped-load': 'travel',
  'sensor-doubt': 'travel',
};

export type Evidence =
  | {
      readonly kind: 'course';
      readonly measure: string;
      readonly asParts: boolean;
      readonly side: string;
      readonly direction: Direction;
    }
  | {
      readonly kind: 'supply';
      /** Below it the supply is too low; null where the warning does not say. */
      readonly limitVolts: number | null;
    }
  | {
      readonly kind: 'travel';
      readonly strokeId: string;
      readonly side: string;
      readonly place: number | null;
    };

/** The picture that belongs to a warning. Of both sides the first is shown. */
export function evidenceOf(warning: Warning, sides: readonly string[]): Evidence {
  const shows = SHOWS[warning.kind];
  const side = warning.side ?? sides[0];
  // Of a rise over a stretch of the travel, where that is.
  if (shows === 'travel' || (warning.kind === 'rising-draw' && warning.position !== null))
    return { kind: 'travel', strokeId: warning.latestStrokeId, side, place: warning.position };
  if (shows === 'supply') {
    const { leastVolts } = warning.evidence;
    return { kind: 'supply', limitVolts: typeof leastVolts === 'number' ? leastVolts : null };
  }
  const direction = warning.direction ?? 'extend';
  return { kind: 'course', measure: shows.course, asParts: shows.asParts, side, direction };
}
