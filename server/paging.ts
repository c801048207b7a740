import { type RawBuilder, type SelectQueryBuilder, sql } from 'kysely';
import { z } from 'zod';
import { invalidField } from './problems.ts';
import { Id, Time } from './schemas/common.ts';

/** What a request asks of a list. */
export interface PageAsked {
  readonly limit: number;
  readonly cursor?: string;
}

/** One page as the API answers it. */
export interface AnsweredPage<Item> {
  readonly items: Item[];
  readonly next: string | null;
}

/** Of which list: cursors name it, such as `rooms/<coach's id>`. */
interface AskedOfList extends PageAsked {
  readonly list: string;
}

/** One page of what a query finds, in the order of ids, which follow time. */
export async function pageById<DB, Table extends keyof DB, Row extends { readonly id: string }, Item>(
  query: SelectQueryBuilder<DB, Table, Row>,
  { list, limit, cursor }: AskedOfList,
  itemOf: (row: Row) => Item,
  order: 'oldest-first' | 'latest-first' = 'oldest-first',
): Promise<AnsweredPage<Item>> {
  const isOldestFirst = order === 'oldest-first';
  const [after] = readCursor(list, cursor, IdPlace) ?? [];
  const left =
    after === undefined
      ? query
      : query.where(isOldestFirst ? sql<boolean>`id > ${after}` : sql<boolean>`id < ${after}`);
  const rows = await left
    .orderBy(sql`id`, isOldestFirst ? 'asc' : 'desc')
    .limit(oneMoreThan(limit))
    .execute();
  return answerPage(list, pageFrom(rows, limit), itemOf, ({ id }) => [id]);
}

/** What puts rows of one time in order before their ids do, which follow from nothing that a reader knows. */
interface AtOneTime<Row> {
  readonly column: RawBuilder<string>;
  of(row: Row): string;
}

/** One page of what a query finds, the latest first by that column, then by what is said of rows of one time, then by id. */
export async function pageByTime<
  DB,
  Table extends keyof DB,
  Column extends string,
  Row extends { readonly id: string } & Readonly<Record<Column, Date>>,
  Item,
>(
  query: SelectQueryBuilder<DB, Table, Row>,
  column: Column,
  { list, limit, cursor }: AskedOfList,
  itemOf: (row: Row) => Item,
  atOneTime?: AtOneTime<Row>,
): Promise<AnsweredPage<Item>> {
  const columns: readonly RawBuilder<unknown>[] = [
    sql.ref(column),
    ...(atOneTime === undefined ? [] : [atOneTime.column]),
    sql`id`,
  ];
  const placeOf = (row: Row) => [
    row[column].toISOString(),
    ...(atOneTime === undefined ? [] : [atOneTime.of(row)]),
    row.id,
  ];
  const shape: z.ZodType<readonly string[]> = atOneTime === undefined ? TimePlace : TimeAndNamePlace;
  const after = readCursor(list, cursor, shape);
  const left =
    after === null ? query : query.where(sql<boolean>`(${sql.join(columns)}) < (${sql.join(typed(after))})`);
  const ordered = columns.reduce((found, each) => found.orderBy(each, 'desc'), left);
  const rows = await ordered.limit(oneMoreThan(limit)).execute();
  return answerPage(list, pageFrom(rows, limit), itemOf, placeOf);
}

/** As Postgres compares them with the columns. */
function typed(place: readonly string[]): RawBuilder<unknown>[] {
  return place.map((value, i) => {
    if (i === 0) return sql`${value}::timestamptz`;
    return i === place.length - 1 ? sql`${value}::uuid` : sql`${value}::text`;
  });
}

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

const TimePlace = z.tuple([Time, Id]);
const TimeAndNamePlace = z.tuple([Time, z.string().regex(/^[\p{L}\p{N}\p{P}\p{Z}\p{S}\p{M}]{1,500}$/u), Id]);
const IdPlace = z.tuple([Id]);

/** Reads a cursor of a list. One that is broken, or was given by another list, is the problem `invalid-field`. */
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

/** The rows of a page as items, and how to go on behind them. */
export function answerPage<Row, Item>(
  list: string,
  page: Page<Row>,
  itemOf: (row: Row) => Item,
  placeOf: (row: Row) => ListPlace,
): AnsweredPage<Item> {
  const last = page.rows.at(-1);
  const next = page.more && last !== undefined ? writeCursor(list, placeOf(last)) : null;
  return { items: page.rows.map(itemOf), next };
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
