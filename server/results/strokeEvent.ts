import type { Selectable } from 'kysely';
import type { StrokeEvent } from '../../analysis/history.ts';
import type { StrokeAnalysis } from '../../analysis/measures.ts';
import { weatherOf } from '../../ingest/weather.ts';
import type { StrokeTable } from '../../migrations/strokeTables.ts';

/** What of a stroke its event is made of. */
export const STROKE_EVENT_COLUMNS = [
  'id',
  'placed_at',
  'placed_by',
  'direction',
  'ambient_c',
  'excluded',
  'analysis',
] as const;

export type StrokeEventRow = Pick<Selectable<StrokeTable>, (typeof STROKE_EVENT_COLUMNS)[number]>;

/** The stroke in its place in the history. Throws `UnmeasuredStroke` where it has no analysis yet. */
export function strokeEvent(row: StrokeEventRow): StrokeEvent {
  if (row.analysis === null) throw new UnmeasuredStroke();
  // The column holds what `measureStroke` answered and nothing else.
  const analysis = row.analysis as StrokeAnalysis;
  return {
    type: 'stroke',
    strokeId: row.id,
    atMs: row.placed_at.getTime(),
    placedByArrival: row.placed_by === 'arrival',
    direction: row.direction ?? (analysis.status === 'done' ? analysis.direction : null),
    ambientC: weatherOf(row.ambient_c),
    excluded: row.excluded,
    analysis,
  };
}

/** A stroke has no analysis yet. */
export class UnmeasuredStroke extends Error {
  constructor() {
    super('A stroke has not been measured yet.');
    this.name = 'UnmeasuredStroke';
  }
}
