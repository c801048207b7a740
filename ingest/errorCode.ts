/** The code that Postgres or Node gave to what went wrong; empty where there is none. */
export function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}

/** SQLSTATEs of what Postgres gave up for another's sake: a serialization failure, a deadlock. It may be done again. */
export const GIVEN_UP: readonly string[] = ['40001', '40P01'];

/** SQLSTATE of what refers to a row that is not there, or not any more. */
export const IS_GONE = '23503';

/**
 * Whether Postgres refused a row for being out of the scope's sight: what it belongs to (a room, a coach) went between
 * two statements of one transaction. Rights that are missing have the same SQLSTATE, and are found elsewhere.
 */
export function isOutOfSight(error: unknown): boolean {
  return (
    codeOf(error) === '42501' &&
    error instanceof Error &&
    'routine' in error &&
    error.routine === 'ExecWithCheckOptions'
  );
}
