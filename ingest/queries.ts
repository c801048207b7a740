import type { PoolClient, QueryConfig, QueryResult, QueryResultRow } from 'pg';

/** What statements go through: a pool, or a client that is in a transaction of its own. */
export interface Queries {
  query<Row extends QueryResultRow>(query: QueryConfig): Promise<QueryResult<Row>>;
}

/** A pool, as far as the scope reaches in which whoever opened it may store. */
export interface Connections extends Queries {
  connect(): Promise<PoolClient>;
}
