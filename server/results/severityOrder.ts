import { type RawBuilder, sql } from 'kysely';
import { SEVERITIES, type Severity } from '../../analysis/warning.ts';

/** Whether a severity is at least another. */
export function atLeast(severity: Severity, least: Severity): boolean {
  return SEVERITIES.indexOf(severity) >= SEVERITIES.indexOf(least);
}

/** SQL for the place of a severity among all of them, rising; null of none. */
export function placeOfSeverity(severity: RawBuilder<unknown>): RawBuilder<number> {
  return sql<number>`array_position(array[${sql.join(SEVERITIES.map((each) => sql.lit(each)))}], ${severity})`;
}
