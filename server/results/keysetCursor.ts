import { z } from 'zod';
import { invalidField } from '../problems.ts';

/**
 * The place in a list after which the next page begins: the values that the list is ordered by. Lists stay whole
 * while rows are added before it.
 */
export function writeCursor(place: readonly (string | number)[]): string {
  return Buffer.from(JSON.stringify(place)).toString('base64url');
}

/** Throws the 422 problem for anything that `writeCursor` did not write. */
export function readCursor<Place extends z.ZodType>(cursor: string, shape: Place): z.infer<Place> {
  try {
    return shape.parse(JSON.parse(Buffer.from(cursor, 'base64url').toString()));
  } catch {
    // Whatever is wrong with it, the client can only take the cursor of an answer instead.
    throw invalidField('/cursor', 'This is not the cursor of an answer.');
  }
}

/** The place in a list that is ordered by time, then id. */
export const TimePlace = z.tuple([z.iso.datetime(), z.uuid()]);

/** Cuts the one row too many that was read to see whether there is more. */
export function cutPage<Row, Item>(
  rows: readonly Row[],
  limit: number,
  place: (row: Row) => readonly (string | number)[],
  item: (row: Row) => Item,
): { items: Item[]; next: string | null } {
  const page = rows.slice(0, limit);
  const last = page[page.length - 1];
  return {
    items: page.map(item),
    next: rows.length > limit && last !== undefined ? writeCursor(place(last)) : null,
  };
}
