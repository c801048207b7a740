import { GroupCommit } from '../../ingest/groupCommit.ts';
import type { Measurer } from '../../ingest/measurer.ts';
import { rowsToSendTo } from '../access/scopes/rowsToSendTo.ts';
import { type Database, inScope } from '../database/openDatabase.ts';

/** Stores strokes, each group of them in the scope of those who sent it. `measurer` measures them before, where it can. */
export function strokeStore(database: Database, measurer: Measurer | null = null): GroupCommit {
  return new GroupCommit((strokes) => inScope(database, rowsToSendTo(strokes)).pool, measurer);
}
