import { z } from 'zod';
import { invalidField } from './problems.ts';
import { Id, Time } from './schemas/common.ts';

/** Some rows of a list, and whether there are more behind them. */
export interface Page<Row> {
  readonly rows: readonly Row[];
  readonly more: boolean;
}

/** What a query asks for, to know whether there is another page: one row more than a page holds. */
export function oneMoreThan(limit: number): number {
  return limit + 1;
}

export function pageFrom<Row>(found: readonly Row[], limit: number): Page<Row> {
  return { rows: found.slice(0, limit), more: found.length > limit };
}

/** Where a list goes on: what it is ordered by, of the last item that was answered. It stays whole while rows are added. */
type ListPlace = readonly (string | number)[];

/** The place in a list that is ordered by time, then id. */
export const TimePlace = z.tuple([Time, Id]);

const IdPlace = z.tuple([Id]);

/**
 * Reads a cursor of the list named `list`, such as `rooms/<coach's id>`. A cursor that is broken, or was given by
 * another list, is the problem `invalid-field`.
 */
export function readCursor<Place extends ListPlace>(
  list: string,
  cursor: string | undefined,
  shape: z.ZodType<Place>,
): Place | null {
  if (cursor === undefined) return null;
  const [from, place] = z.tuple([z.string(), z.unknown()]).safeParse(parsed(cursor)).data ?? [];
  const read = shape.safeParse(place);
  if (from !== list || !read.success) throw invalidField('/cursor', 'This is no cursor of this list.');
  return read.data;
}

/** The same of a list that is ordered by id. */
export function readIdCursor(list: string, cursor: string | undefined): string | null {
  return readCursor(list, cursor, IdPlace)?.[0] ?? null;
}

/** One page as the API answers it. */
export function answerPage<Row, Item>(
  list: string,
  page: Page<Row>,
  itemOf: (row: Row) => Item,
  placeOf: (row: Row) => ListPlace,
): { items: Item[]; next: string | null } {
  const last = page.rows.at(-1);
  const next = page.more && last !== undefined ? writeCursor(list, placeOf(last)) : null;
  return { items: page.rows.map(itemOf), next };
}

/** The same of a list that is ordered by id. */
export function answerIdPage<Row extends { readonly id: string }, Item>(
  list: string,
  page: Page<Row>,
  itemOf: (row: Row) => Item,
) {
  return answerPage(list, page, itemOf, ({ id }) => [id]);
}

function writeCursor(list: string, place: ListPlace): string {
  return Buffer.from(JSON.stringify([list, place])).toString('base64url');
}

function parsed(cursor: string): unknown {
  try {
    return JSON.parse(Buffer.from(cursor, 'base64url').toString('utf8'));
  } catch {
    // Whatever it is, it does not fit the schema.
    return null;
  }
}
