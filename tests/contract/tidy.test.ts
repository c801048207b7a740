import { randomBytes } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { tidy } from '../../server/database/tidy.ts';
import { type Member, startService, type TestService } from '../support/service.ts';

let service: TestService;
let dealer: Member;

beforeAll(async () => {
  service = await startService({ worker: false });
  dealer = await service.newAccount();
});
afterAll(() => service?.stop());

test.each(['sessions', 'invitations', 'password_resets'])(
  '%s go when they have run out, and not before',
  async (table) => {
    const { accountId, id } = dealer.person;
    const [over, living] = await Promise.all(
      ['-1 second', '1 hour'].map(async (left) => {
        const hash = randomBytes(32);
        await service.pool.query(
          `insert into ${table} (account_id, token_hash, person_id, expires_at) values ($1, $2, $3, now() + $4::interval)`,
          [accountId, hash, id, left],
        );
        return hash;
      }),
    );
    await tidy(service.app.database);
    const { rows } = await service.pool.query(`select token_hash from ${table} where token_hash = any ($1)`, [
      [over, living],
    ]);
    expect(rows).toEqual([{ token_hash: living }]);
  },
);
