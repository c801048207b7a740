import type { Direction, PreviewedColumn, StrokesPreview } from '../api/types.ts';
import { momentOf } from '../fieldTime.ts';

/** What a person says of a file beside what stands in it; null: as the service takes it. */
export interface Corrections {
  /** As the field holds it: local time. Empty: as the file says. */
  readonly startedAt: string;
  readonly rateHz: string;
  /** One code a column. */
  readonly columns: readonly string[] | null;
  /** One for each stroke; null: as its current tells. */
  readonly directions: readonly (Direction | null)[];
}

export const NO_CORRECTIONS: Corrections = { startedAt: '', rateHz: '', columns: null, directions: [] };

/** How the service names what a column is: `side/front/A`, `time/s`, `none`. */
export function codeOf({ kind, side, unit }: PreviewedColumn): string {
  return [kind, side, unit].filter((part) => part !== null).join('/');
}

export function hasTimes(columns: readonly PreviewedColumn[]): boolean {
  return columns.some(({ kind }) => kind === 'time');
}

/** The query that says so, for the preview and for storing alike. */
export function queryOf(said: Corrections, preview: StrokesPreview | null): URLSearchParams {
  const query = new URLSearchParams();
  const start = momentOf(said.startedAt);
  if (start !== null) query.set('startedAt', start.toISOString());
  if (said.rateHz.trim() !== '' && (preview === null || !hasTimes(preview.columns)))
    query.set('rateHz', said.rateHz.trim());
  if (said.columns !== null) query.set('columns', said.columns.map(quoted).join(','));
  const directions = directionsOf(said, preview);
  if (said.directions.some((one) => one !== null) && directions.every((one) => one !== null))
    query.set('direction', directions.join(','));
  return query;
}

/** The direction of each stroke: as a person says, else as its current tells; null where neither does. */
export function directionsOf(said: Corrections, preview: StrokesPreview | null): (Direction | null)[] {
  return (preview?.strokes ?? []).map(({ direction }, i) => said.directions[i] ?? direction);
}

/** A name may hold a comma. */
function quoted(code: string): string {
  return `"${code.replaceAll('"', '""')}"`;
}
