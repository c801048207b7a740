import type { Direction } from '../../api/types.ts';
import type { TrendScale } from '../../charts/trend/trendValues.ts';

/** What of a room's course the page's address asks for. */
export interface TrendQuestion {
  /** The name of a measure; one that the service does not have counts as not asked. */
  readonly measure: string;
  readonly direction: Direction;
  readonly scale: TrendScale;
}

const USUAL: TrendQuestion = { measure: 'runningAmps', direction: 'extend', scale: 'adjusted' };

/** Reads the address; what it does not know counts as not asked. */
export function trendQuestionOf(search: string): TrendQuestion {
  const given = new URLSearchParams(search);
  return {
    measure: given.get('measure') ?? USUAL.measure,
    direction: given.get('direction') === 'retract' ? 'retract' : USUAL.direction,
    scale: given.get('values') === 'measured' ? 'measured' : USUAL.scale,
  };
}

/** The same as the end of an address: only what is not usual. */
export function trendSearch({ measure, direction, scale }: TrendQuestion): string {
  const asked = new URLSearchParams();
  if (measure !== USUAL.measure) asked.set('measure', measure);
  if (direction !== USUAL.direction) asked.set('direction', direction);
  if (scale !== USUAL.scale) asked.set('values', scale);
  return asked.size === 0 ? '' : `?${asked}`;
}
