import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';

const service = serviceOfTests({ worker: false });
let dealer: Member;

beforeEach(async () => {
  dealer = await service.newAccount();
});

const PASSWORD = 'seven plain wooden spoons';
const newEmail = () => `${randomUUID()}@example.com`;
const invite = async (email = newEmail(), role = 'technician') =>
  (await service.as(dealer.token, 'POST', '/people', { email, name: 'Ines', role })).body;
const accept = (invitation: string, password = PASSWORD) =>
  service.request('POST', `/invitations/${invitation}`, { body: { password } });
const age = (sql: string) => service.pool.query(sql);

describe('an invitation', () => {
  test('sets the password and signs in', async () => {
    const email = newEmail();
    const { person, invitation } = await invite(email.toUpperCase());
    expect(person).toMatchObject({
      email,
      name: 'Ines',
      role: 'technician',
      joined: false,
      accountId: dealer.person.accountId,
    });
    const accepted = await accept(invitation);
    expect([accepted.status, accepted.body.person.id]).toEqual([200, person.id]);
    expect(accepted.headers.get('set-cookie')).toContain('HttpOnly');
    expect((await service.as(accepted.body.token, 'GET', '/session')).body.person.email).toBe(email);
    expect(await service.signIn(email, PASSWORD)).toMatch(/^slp_/);
    expect((await service.as(dealer.token, 'GET', `/people/${person.id}`)).body.joined).toBe(true);
  });

  test('is good once, also when it is sent many times at once', async () => {
    const { invitation } = await invite();
    const answers = await Promise.all(Array.from({ length: 8 }, () => accept(invitation)));
    expect(answers.map(({ status }) => status).sort()).toEqual([200, ...Array(7).fill(404)]);
    expect((await accept(invitation, 'another long secret')).status).toBe(404);
  });

  test('is good for 7 days', async () => {
    const { invitation, person } = await invite();
    const ageBy = (span: string) =>
      age(
        `update invitations set expires_at = expires_at - interval '${span}' where person_id = '${person.id}'`,
      );
    await ageBy('7 days');
    expect((await accept(invitation)).status).toBe(404);
    await ageBy('-1 minute');
    expect((await accept(invitation)).status).toBe(200);
  });

  test('that is none answers 404, a bad password 422 without using it up', async () => {
    for (const none of ['nothing', dealer.token, `sli_${'A'.repeat(64)}`, '%00'])
      expect([none, (await accept(none)).status]).toEqual([none, 404]);
    const { invitation } = await invite();
    for (const bad of ['elevenchars', 'x'.repeat(201)])
      expect((await accept(invitation, bad)).status).toBe(422);
    expect((await accept(invitation)).status).toBe(200);
  });

  test.each([12, 200])(
    'takes any password of %i characters, be it one of them over and over',
    async (length) => {
      expect((await accept((await invite()).invitation, 'x'.repeat(length))).status).toBe(200);
    },
  );

  test('is kept as a hash alone, and opens nothing as a token', async () => {
    const { invitation } = await invite();
    expect((await service.as(invitation, 'GET', '/session')).status).toBe(401);
    const { rows } = await service.pool.query('select i::text from invitations i');
    expect(JSON.stringify(rows)).not.toContain(invitation.slice(4));
  });

  test('can be given again until it is accepted; the earlier one ends', async () => {
    const { invitation, person } = await invite();
    const again = (await service.as(dealer.token, 'POST', `/people/${person.id}/invitation`)).body.invitation;
    expect((await accept(invitation)).status).toBe(404);
    expect((await accept(again)).status).toBe(200);
    expect((await service.as(dealer.token, 'POST', `/people/${person.id}/invitation`)).status).toBe(409);
  });

  test('for a colleague’s address is a conflict', async () => {
    const body = { email: dealer.email, name: 'Twice', role: 'owner' };
    const refused = await service.as(dealer.token, 'POST', '/people', body);
    expect([refused.status, refused.body.detail]).toEqual([409, expect.stringContaining('your account')]);
  });

  test('does not tell that an address signs in elsewhere, and takes nothing from who does', async () => {
    const other = await service.newAccount();
    const unknown = await service.as(dealer.token, 'POST', '/people', {
      email: newEmail(),
      name: 'I',
      role: 'owner',
    });
    const known = await service.as(dealer.token, 'POST', '/people', {
      email: other.email,
      name: 'I',
      role: 'owner',
    });
    expect([known.status, Object.keys(known.body)]).toEqual([unknown.status, Object.keys(unknown.body)]);
    const refused = await accept(known.body.invitation);
    expect([refused.status, refused.body.detail]).toEqual([
      409,
      expect.stringMatching(/under another address.*granted/),
    ]);
    expect(await service.signIn(other.email, other.password)).toMatch(/^slp_/);
  });

  test('of the same request again is the same one', async () => {
    const sent = {
      token: dealer.token,
      body: { email: newEmail(), name: 'Ines', role: 'owner' },
      headers: { 'idempotency-key': randomUUID() },
    };
    const [first, again] = [
      await service.request('POST', '/people', sent),
      await service.request('POST', '/people', sent),
    ];
    expect(again.body).toEqual(first.body);
  });
});

describe('a person', () => {
  test('has another role from the next request on', async () => {
    const technician = await service.newMember(dealer, 'technician');
    const coach = () => service.as(technician.token, 'POST', '/coaches', { name: 'Wren' });
    expect((await coach()).status).toBe(201);
    const change = { role: 'owner', name: 'Olive' };
    const changed = await service.as(dealer.token, 'PATCH', `/people/${technician.person.id}`, change);
    expect(changed.body).toMatchObject(change);
    expect((await coach()).status).toBe(403);
  });

  test('who is removed is signed out at once and cannot sign in again', async () => {
    const { person, email, password, token } = await service.newMember(dealer, 'technician');
    expect((await service.as(dealer.token, 'DELETE', `/people/${person.id}`)).status).toBe(204);
    expect((await service.as(token, 'GET', '/coaches')).status).toBe(401);
    expect((await service.request('POST', '/session', { body: { email, password } })).status).toBe(401);
    expect((await service.as(dealer.token, 'GET', `/people/${person.id}`)).status).toBe(404);
    expect((await invite(email)).person.email).toBe(email);
  });

  test('who lost a phone is signed out on every device, and may sign in again', async () => {
    const { person, email, password, token } = await service.newMember(dealer, 'technician');
    const other = await service.signIn(email, password);
    expect((await service.as(token, 'DELETE', `/people/${person.id}/sessions`)).status).toBe(404);
    expect((await service.as(dealer.token, 'DELETE', `/people/${person.id}/sessions`)).status).toBe(204);
    for (const ended of [token, other]) expect((await service.as(ended, 'GET', '/coaches')).status).toBe(401);
    const again = await service.signIn(email, password);
    expect((await service.as(again, 'GET', '/coaches')).status).toBe(200);
    const { body } = await service.as(
      dealer.token,
      'GET',
      `/record?acts=signed-out&personId=${dealer.person.id}`,
    );
    expect(body.items).toMatchObject([{ act: 'signed-out' }, { act: 'signed-out' }]);
  });

  test('who is the last dealer stays one', async () => {
    const path = `/people/${dealer.person.id}`;
    await invite(newEmail(), 'dealer');
    expect((await service.as(dealer.token, 'DELETE', path)).status).toBe(409);
    expect((await service.as(dealer.token, 'PATCH', path, { role: 'owner' })).status).toBe(409);
    const second = await service.newMember(dealer, 'dealer');
    const [one, other] = await Promise.all([
      service.as(dealer.token, 'DELETE', `/people/${second.person.id}`),
      service.as(second.token, 'DELETE', path),
    ]);
    const left = await service.pool.query(
      'select id from people where account_id = $1 and password_hash is not null',
      [dealer.person.accountId],
    );
    expect([one.status, other.status].filter((status) => status === 204)).toHaveLength(1);
    expect(left.rows).toHaveLength(1);
  });

  test('is listed in pages', async () => {
    for (let i = 0; i < 3; i++) await invite();
    const seen = [];
    for (let next = ''; next !== null; ) {
      const page = await service.as(dealer.token, 'GET', `/people?limit=3${next && `&cursor=${next}`}`);
      seen.push(...page.body.items.map(({ id }: { id: string }) => id));
      next = page.body.next;
    }
    expect(new Set(seen).size).toBe(4);
    expect(seen).toHaveLength(4);
  });
});

describe('signing out and passwords', () => {
  test('sessions are listed, ended one by one, and all at once', async () => {
    const second = await service.signIn(dealer.email, dealer.password);
    const list = (await service.as(second, 'GET', '/sessions')).body.items;
    expect(list.map(({ current }: { current: boolean }) => current)).toEqual([true, false]);
    expect((await service.as(second, 'DELETE', `/sessions/${list[1].id}`)).status).toBe(204);
    expect((await service.as(dealer.token, 'GET', '/session')).status).toBe(401);
    const third = await service.signIn(dealer.email, dealer.password);
    expect((await service.as(third, 'DELETE', '/sessions')).status).toBe(204);
    for (const token of [second, third])
      expect((await service.as(token, 'GET', '/session')).status).toBe(401);
  });

  test('a session that nobody used for 14 days is over', async () => {
    const where = `where person_id = '${dealer.person.id}'`;
    await age(`update sessions set last_seen_at = now() - interval '13 days 23 hours' ${where}`);
    expect((await service.as(dealer.token, 'GET', '/session')).status).toBe(200);
    const { rows } = await age(
      `select last_seen_at > now() - interval '1 hour' as noted from sessions ${where}`,
    );
    expect(rows).toEqual([{ noted: true }]);
    await age(`update sessions set last_seen_at = now() - interval '14 days' ${where}`);
    expect((await service.as(dealer.token, 'GET', '/session')).status).toBe(401);
    const again = await service.signIn(dealer.email, dealer.password);
    expect((await service.as(again, 'GET', '/sessions')).body.items).toEqual([
      expect.objectContaining({ current: true }),
    ]);
  });

  test('a new password needs the old one and ends the other sessions', async () => {
    const other = await service.signIn(dealer.email, dealer.password);
    const change = (oldPassword: string, newPassword = PASSWORD) =>
      service.as(dealer.token, 'PUT', '/password', { oldPassword, newPassword });
    expect((await change('not the old one')).body.type).toBe('/problems/wrong-password');
    expect((await change(dealer.password, 'too short')).status).toBe(422);
    expect((await service.as(other, 'GET', '/session')).status).toBe(200);
    expect((await change(dealer.password)).status).toBe(204);
    expect((await service.as(other, 'GET', '/session')).status).toBe(401);
    expect((await service.as(dealer.token, 'GET', '/session')).status).toBe(200);
    expect(await service.signIn(dealer.email, PASSWORD)).toMatch(/^slp_/);
  });

  test('wrong old passwords count as wrong passwords do', async () => {
    const body = { oldPassword: 'a guess', newPassword: PASSWORD };
    for (let i = 0; i < 10; i++) await service.as(dealer.token, 'PUT', '/password', body);
    const refused = await service.as(dealer.token, 'PUT', '/password', {
      ...body,
      oldPassword: dealer.password,
    });
    expect([refused.status, Number(refused.headers.get('retry-after')) > 0]).toEqual([429, true]);
  });
});
