import type { Kysely } from 'kysely';
import { isUuid } from '../../ingest/uuid.ts';
import type { Tables } from '../../migrations/tables.ts';
import { type AccountInScope, accountInScope } from '../access/scopes/scope.ts';
import { OperatorError } from '../operatorError.ts';

const MOST_NAMED = 20;

/** The account of a name or id; the only one where none is named. Throws `OperatorError` that lists what there is. */
export async function accountNamed(db: Kysely<Tables>, account: string | undefined): Promise<AccountInScope> {
  let query = db.selectFrom('accounts').select(['id', 'name']).orderBy('id').limit(MOST_NAMED);
  if (account !== undefined) query = query.where(isUuid(account) ? 'id' : 'name', '=', account);
  const found = await query.execute();
  if (found.length === 1) return accountInScope(found[0].id);
  const which = account === undefined ? '' : ` called ${account}`;
  if (found.length === 0) throw new OperatorError(`There is no account${which}.`);
  const known = found.map(({ id, name }) => `  ${id}  ${name}`).join('\n');
  throw new OperatorError(`There are several accounts${which}: say which with --account.\n${known}`);
}
