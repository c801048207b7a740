import { sql } from 'kysely';
import { ANALYSIS_VERSION } from '../../../analysis/room/fold.ts';

/**
 * `room_progress.measured_by` names what the strokes of a room are measured by: the version of the analysis, and the
 * revision at which the room's description was first gone through with it. Whoever changes either clears it in the same
 * transaction; whoever brings the room up to date gives it a new one.
 */
const OURS = `${ANALYSIS_VERSION} `;

/** Whether that is this version of the analysis. */
export function isOfThisAnalysis(measuredBy: string): boolean {
  return measuredBy.startsWith(OURS);
}

/** SQL for it, of a row of `room_progress as p` that is brought up to date. */
export const MEASURED_BY_NOW = sql<string>`case when starts_with(p.measured_by, ${sql.lit(OURS)}) then p.measured_by
  else ${sql.lit(OURS)} || p.revision end`;
