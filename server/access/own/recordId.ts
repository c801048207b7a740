import { parse, v7 } from 'uuid';

/**
 * The id under which the API tells an act. The database notes acts by itself, under random ids (version 4): the instant
 * of the act and that id's randomness make one of version 7, always the same.
 */
export function recordId(at: Date, storedId: string): string {
  return v7({ msecs: at.getTime(), random: parse(storedId) });
}
