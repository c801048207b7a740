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
