import { z } from 'zod';
import { invalidField } from '../problems.ts';
import type { Page } from '../things/page.ts';

/** Where a list goes on: the sort key of the last item that was answered, oldest part first. */
export type SortKey = readonly string[];

/**
 * Reads a cursor of the list named `list`, such as `rooms/<coach's id>`. A cursor that is broken, or was given by
 * another list, is the problem `invalid-field`.
 */
export function readCursor<Key extends SortKey>(
  list: string,
  cursor: string | undefined,
  key: z.ZodType<Key>,
): Key | null {
  if (cursor === undefined) return null;
  const [from, sortKey] = z.tuple([z.string(), z.unknown()]).safeParse(parsed(cursor)).data ?? [];
  const read = key.safeParse(sortKey);
  if (from !== list || !read.success) throw invalidField('/cursor', 'This is no cursor of this list.');
  return read.data;
}

/** One page as the API answers it. */
export function answerPage<Row, Item>(
  list: string,
  page: Page<Row>,
  itemOf: (row: Row) => Item,
  keyOf: (row: Row) => SortKey,
): { items: Item[]; next: string | null } {
  const last = page.rows.at(-1);
  const next = page.more && last !== undefined ? writeCursor(list, keyOf(last)) : null;
  return { items: page.rows.map(itemOf), next };
}

function writeCursor(list: string, key: SortKey): string {
  return Buffer.from(JSON.stringify([list, key])).toString('base64url');
}

function parsed(cursor: string): unknown {
  try {
    return JSON.parse(Buffer.from(cursor, 'base64url').toString('utf8'));
  } catch {
    // Whatever it is, it does not fit the schema.
    return null;
  }
}
