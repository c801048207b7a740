import { randomBytes, randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { tidy } from '../../../server/work/jobs/tidy.ts';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';

const service = serviceOfTests({ worker: false });
let dealer: Member;

beforeAll(async () => {
  dealer = await service.newAccount();
});

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

test('tokens of scripts go when they have run out, and not before', async () => {
  const { accountId, id } = dealer.person;
  const [over, living] = [randomUUID(), randomUUID()];
  await service.pool.query(
    `insert into personal_tokens (account_id, id, person_id, name, token_hash, may_change, until)
     select $1, t.id, $2, 'For the nightly script', sha256(t.id::text::bytea), false, t.until
     from (values ($3::uuid, now() - interval '1 second'), ($4::uuid, now() + interval '1 hour')) as t (id, until)`,
    [accountId, id, over, living],
  );
  await tidy(service.app.database);
  const { rows } = await service.pool.query('select id from personal_tokens where id = any ($1)', [
    [over, living],
  ]);
  expect(rows).toEqual([{ id: living }]);
});

test('what cannot be removed holds up nothing else, and is told', async () => {
  const { accountId } = dealer.person;
  const [kept, gone] = [randomUUID(), randomUUID()].sort();
  await service.pool.query(
    `insert into coaches (account_id, id, name, deleted_at)
     select $1, id, 'Old', now() - interval '31 days' from unnest($2::uuid[]) as id`,
    [accountId, [kept, gone]],
  );
  await service.pool.query(
    `insert into sign_in_failures (email, failed_at) values ('old@example.com', now() - interval '16 minutes')`,
  );
  await service.pool.query(`
    create function refuse_removal() returns trigger language plpgsql as
      $$ begin raise exception 'This one stays.'; end $$;
    create trigger refuse_removal before delete on coaches for each row when (old.id = '${kept}')
      execute function refuse_removal()`);
  const failed = await tidy(service.app.database).catch((error: unknown) => error);
  expect(failed).toBeInstanceOf(AggregateError);
  expect(String((failed as AggregateError).errors)).toContain('This one stays.');
  const { rows } = await service.pool.query('select id from coaches where id = any ($1)', [[kept, gone]]);
  expect(rows).toEqual([{ id: kept }]);
  const failures = await service.pool.query(`select from sign_in_failures where email = 'old@example.com'`);
  expect(failures.rowCount).toBe(0);
  await service.pool.query('drop trigger refuse_removal on coaches');
});
