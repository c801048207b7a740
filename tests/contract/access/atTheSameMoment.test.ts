import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { beforeEach, expect, onTestFinished, test } from 'vitest';
import { hashPasswordAtOnce } from '../../../server/access/passwords/passwords.ts';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { untilSomebodyWaits } from '../../support/untilSomebodyWaits.ts';

const service = serviceOfTests({ worker: false });
const PASSWORD = 'seven plain wooden spoons';
let dealer: Member;

beforeEach(async () => {
  dealer = await service.newAccount();
});

/** Another process in a transaction, in which it holds writers of a table. */
async function holding(table: string): Promise<pg.Client> {
  const other = new pg.Client(service.databaseUrl);
  await other.connect();
  onTestFinished(() => other.end());
  await other.query(`begin; lock table ${table} in exclusive mode`);
  return other;
}

async function changePassword(other: pg.Client): Promise<void> {
  const { id } = dealer.person;
  const hash = await hashPasswordAtOnce(PASSWORD);
  await other.query('update people set password_hash = $2 where id = $1', [id, hash]);
  for (const table of ['sessions', 'personal_tokens'])
    await other.query(`delete from ${table} where person_id = $1`, [id]);
}

const livingInvitations = async (answers: readonly { body: { invitation?: string } }[]) => {
  const sent = answers.flatMap(({ body }) => body.invitation ?? []);
  const statuses = await Promise.all(
    sent.map(async (invitation) => (await service.request('GET', `/invitations/${invitation}`)).status),
  );
  return statuses.filter((status) => status === 204).length;
};

async function invited() {
  const body = { email: `${randomUUID()}@example.com`, name: 'Ines', role: 'technician' };
  return (await service.as(dealer.token, 'POST', '/people', body)).body;
}

test('whoever signs in while the password changes has no session by the old one', async () => {
  const other = await holding('sessions');
  const { email, password } = dealer;
  const signing = service.request('POST', '/session', { body: { email, password } });
  await untilSomebodyWaits(other);
  await changePassword(other);
  await other.query('commit');
  const { status, body } = await signing;
  expect([status, body.type]).toEqual([401, '/problems/wrong-password']);
  expect(await service.signIn(email, PASSWORD)).toMatch(/^slp_/);
});

test('whoever makes a token for a script while the password is set anew has none', async () => {
  const other = await holding('personal_tokens');
  await changePassword(other);
  const until = new Date(Date.now() + 86_400_000).toISOString();
  const making = service.as(dealer.token, 'POST', '/tokens', { name: 'Nightly', until });
  await untilSomebodyWaits(other);
  await other.query('commit');
  const { status, body } = await making;
  expect([status, body.type]).toEqual([401, '/problems/not-signed-in']);
});

test('of two invitations of one person at once one is good', async () => {
  const { person } = await invited();
  const other = await holding('invitations');
  const again = [1, 2].map(() => service.as(dealer.token, 'POST', `/people/${person.id}/invitation`));
  await untilSomebodyWaits(other, 2);
  await other.query('commit');
  const answers = await Promise.all(again);
  expect(answers.map(({ status }) => status)).toEqual([201, 201]);
  expect(await livingInvitations(answers)).toBe(1);
});

test('no invitation is given to whoever joins meanwhile', async () => {
  const { person, invitation } = await invited();
  const other = await holding('directory');
  const joining = service.request('POST', `/invitations/${invitation}`, { body: { password: PASSWORD } });
  await untilSomebodyWaits(other);
  const again = service.as(dealer.token, 'POST', `/people/${person.id}/invitation`);
  await untilSomebodyWaits(other, 2);
  await other.query('commit');
  expect([(await joining).status, (await again).status]).toEqual([200, 409]);
  expect(await livingInvitations([await again])).toBe(0);
});
