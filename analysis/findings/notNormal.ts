import type { RoomState } from '../roomState.ts';
import type { WarningKind } from '../warning.ts';

/** What is said of how the room moves, which the strokes show: not of one place, of the record, the supply, or from the first on. */
const NOT_NORMAL: ReadonlySet<WarningKind> = new Set([
  'rising-draw',
  'uneven-sides',
  'dropped-load',
  'late-side',
  'short-travel',
  'draw-rebound',
]);

/**
 * Whether strokes are known not to be as this room's are: they teach no baseline, after work they are held against the old one, to
 * see whether it helped, and a current that is higher has its cause.
 */
export function isNotNormal({ open }: Pick<RoomState, 'open'>): boolean {
  return open.some(({ kind }) => NOT_NORMAL.has(kind));
}
