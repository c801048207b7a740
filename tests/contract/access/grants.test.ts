import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { type Fleet, newFleet, newService, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });
let dealer: Member;
let visitor: Member;
let fleet: Fleet;
let other: Fleet;

beforeEach(async () => {
  [dealer, visitor] = await Promise.all([service.newAccount(), service.newAccount()]);
  fleet = await newFleet(service, dealer.token);
  other = await newFleet(service, dealer.token);
});

const PASSWORD = 'seven plain wooden spoons';
const newEmail = () => `${randomUUID()}@example.com`;
const grant = async (email: string, role: string, more: object = {}) =>
  service.as(dealer.token, 'POST', `/coaches/${fleet.coachId}/grants`, { email, role, ...more });
const accept = (invitation: string, password = PASSWORD) =>
  service.request('POST', `/invitations/${invitation}`, { body: { password } });
const coachesOf = async (token: string): Promise<string[]> =>
  (await service.as(token, 'GET', '/coaches')).body.items.map(({ id }: { id: string }) => id);

describe('a grant to a person of another account', () => {
  test('shows the coach, in lists too, and no other of its account', async () => {
    const own = await newFleet(service, visitor.token);
    const given = await grant(visitor.email, 'owner');
    expect(given.body).toEqual({
      id: expect.any(String),
      coachId: fleet.coachId,
      email: visitor.email,
      name: visitor.person.name,
      role: 'owner',
      until: null,
      createdAt: expect.any(String),
    });
    expect(await coachesOf(visitor.token)).toEqual([fleet.coachId, own.coachId]);
    const overview = (await service.as(visitor.token, 'GET', '/overview')).body.items;
    expect(
      overview.flatMap(({ rooms }: { rooms: { id: string }[] }) => rooms.map(({ id }) => id)).sort(),
    ).toEqual([fleet.roomId, own.roomId].sort());
    for (const path of ['coaches', 'overview', 'warnings'])
      expect((await service.as(visitor.token, 'GET', `/${path}`)).text).not.toContain(other.coachId);
    expect((await service.as(visitor.token, 'GET', `/rooms/${other.roomId}/status`)).status).toBe(404);
  });

  test('shows a comparison, and not whose coach it is', async () => {
    await grant(visitor.email, 'technician');
    const spans = new URLSearchParams({
      beforeFrom: '2026-01-01T00:00:00Z',
      beforeTo: '2026-01-31T00:00:00Z',
      afterFrom: '2026-02-01T00:00:00Z',
      afterTo: '2026-02-28T00:00:00Z',
    });
    const seen = await service.as(visitor.token, 'GET', `/rooms/${fleet.roomId}/comparison?${spans}`);
    expect(seen.body).toMatchObject({ account: null, before: { strokes: 0 } });
    const own = await service.as(dealer.token, 'GET', `/rooms/${fleet.roomId}/comparison?${spans}`);
    expect(own.body).toMatchObject({ account: dealer.person.name, before: { strokes: 0 } });
  });

  test('is paged through with its own coaches', async () => {
    const own = await newFleet(service, visitor.token);
    await grant(visitor.email, 'owner');
    for (const path of ['/coaches', '/overview']) {
      const first = (await service.as(visitor.token, 'GET', `${path}?limit=1`)).body;
      const second = (await service.as(visitor.token, 'GET', `${path}?limit=1&cursor=${first.next}`)).body;
      const ids = [...first.items, ...second.items].map(({ id }: { id: string }) => id);
      expect([ids.sort(), second.next]).toEqual([[fleet.coachId, own.coachId].sort(), null]);
    }
  });

  test('ends at its date, and at once when it is taken back', async () => {
    const until = new Date(Date.now() + 86_400_000).toISOString();
    const dated = (await grant(visitor.email, 'technician', { until })).body;
    expect(dated.until).toBe(until);
    const path = `/rooms/${fleet.roomId}/trend?measure=runningAmps&direction=extend&side=front`;
    expect((await service.as(visitor.token, 'GET', path)).status).toBe(200);
    await service.pool.query('update grants set until = now() where id = $1', [dated.id]);
    expect((await service.as(visitor.token, 'GET', path)).status).toBe(404);
    expect(await coachesOf(visitor.token)).toEqual([]);
    const open = (await grant(visitor.email, 'owner')).body;
    expect((await service.as(visitor.token, 'GET', path)).status).toBe(200);
    expect((await service.as(dealer.token, 'DELETE', `/grants/${open.id}`)).status).toBe(204);
    expect((await service.as(visitor.token, 'GET', path)).status).toBe(404);
    const listed = (await service.as(dealer.token, 'GET', `/coaches/${fleet.coachId}/grants`)).body.items;
    expect(listed.map(({ id }: { id: string }) => id)).toEqual([dated.id]);
  });

  test('until a time that is over is refused', async () => {
    for (const until of ['2020-01-01T00:00:00Z', new Date(Date.now() - 1000).toISOString()]) {
      const answer = await grant(visitor.email, 'owner', { until });
      expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, '/until']);
    }
    expect((await grant(visitor.email, 'owner', { until: null })).status).toBe(201);
  });

  test('replaces the one before it: the latest role counts, and with it the coach goes', async () => {
    const path = `/coaches/${fleet.coachId}`;
    const patched = async () =>
      (await service.as(visitor.token, 'PATCH', path, { notes: 'Seen to.' })).status;
    await grant(visitor.email, 'owner');
    const elsewhere = { email: visitor.email, role: 'owner' };
    await service.as(dealer.token, 'POST', `/coaches/${other.coachId}/grants`, elsewhere);
    const second = (await grant(visitor.email, 'technician')).body;
    expect(await patched()).toBe(200);
    const third = (await grant(visitor.email.toUpperCase(), 'owner')).body;
    expect(await patched()).toBe(403);
    expect((await service.as(dealer.token, 'GET', `/grants/${second.id}`)).status).toBe(404);
    const listed = (await service.as(dealer.token, 'GET', `${path}/grants`)).body.items;
    expect(listed).toEqual([third]);
    await service.as(dealer.token, 'DELETE', `/grants/${third.id}`);
    expect(await coachesOf(visitor.token)).toEqual([other.coachId]);
  });

  test('replaces the one before it when both come at once', async () => {
    const given = await Promise.all(
      ['owner', 'technician', 'owner'].map((role) => grant(visitor.email, role)),
    );
    expect(given.map(({ status }) => status)).toEqual([201, 201, 201]);
    const listed = (await service.as(dealer.token, 'GET', `/coaches/${fleet.coachId}/grants`)).body.items;
    expect(listed).toHaveLength(1);
  });

  test('ends with the person, and with the coach', async () => {
    const second = await service.newMember(visitor, 'technician');
    await grant(second.email, 'owner');
    expect((await service.as(visitor.token, 'DELETE', `/people/${second.person.id}`)).status).toBe(204);
    expect((await service.as(dealer.token, 'GET', `/coaches/${fleet.coachId}/grants`)).body.items).toEqual(
      [],
    );
    const { id } = (await grant(visitor.email, 'owner')).body;
    await service.as(dealer.token, 'DELETE', `/coaches/${fleet.coachId}`);
    expect((await service.as(dealer.token, 'GET', `/grants/${id}`)).status).toBe(404);
    expect(await coachesOf(visitor.token)).toEqual([]);
  });

  test('is given to one who was invited as a colleague, and signs in to an account of its own', async () => {
    const body = { email: visitor.email, name: 'Ines', role: 'owner' };
    const { invitation } = (await service.as(dealer.token, 'POST', '/people', body)).body;
    const given = await grant(visitor.email, 'technician');
    expect([given.status, given.body.invitation]).toEqual([201, undefined]);
    expect(await coachesOf(visitor.token)).toEqual([fleet.coachId]);
    expect((await accept(invitation)).status).toBe(409);
    const nobody = newEmail();
    await service.as(dealer.token, 'POST', '/people', { ...body, email: nobody });
    expect((await grant(nobody, 'technician')).status).toBe(422);
  });

  test('is refused for a colleague, who sees the coach already', async () => {
    const colleague = await service.newMember(dealer, 'owner');
    const refused = await grant(colleague.email, 'technician');
    expect([refused.status, refused.body.errors[0].pointer]).toEqual([422, '/email']);
  });
});

describe('from one address, within a minute,', () => {
  const acceptFrom = (from: string, invitation: string) =>
    service.request('POST', `/invitations/${invitation}`, {
      body: { password: PASSWORD },
      headers: { 'x-forwarded-for': from },
    });

  test('any number of invitations is accepted', async () => {
    const invited = await Promise.all(Array.from({ length: 65 }, () => grant(newEmail(), 'owner')));
    const accepted = await Promise.all(
      invited.map(({ body }) => acceptFrom('203.0.113.30', body.invitation)),
    );
    expect(new Set(accepted.map(({ status }) => status))).toEqual(new Set([200]));
  });

  test('60 that are none are too many', async () => {
    const from = '203.0.113.31';
    for (let n = 0; n < 60; n++) expect((await acceptFrom(from, `none-${n}`)).status).toBe(404);
    const { invitation } = (await grant(newEmail(), 'owner')).body;
    const refused = await acceptFrom(from, invitation);
    expect([refused.status, refused.body.type]).toEqual([429, '/problems/too-many-requests']);
    expect((await acceptFrom('203.0.113.32', invitation)).status).toBe(200);
  });
});

describe('whoever visits', () => {
  test('as a technician works on the coach, and sends strokes to its rooms alone', async () => {
    await grant(visitor.email, 'technician');
    const room = { name: 'Den', drive: 'other', sides: ['main'] };
    const made = await service.as(visitor.token, 'POST', `/coaches/${fleet.coachId}/rooms`, room);
    expect((await service.as(dealer.token, 'GET', `/rooms/${made.body.id}`)).status).toBe(200);
    const strokes = [strokeBody(fleet.roomId, 1), strokeBody(other.roomId, 2)];
    const sent = await service.as(visitor.token, 'POST', '/strokes', strokes);
    expect(sent.body.results.map(({ outcome }: { outcome: string }) => outcome)).toEqual([
      'stored',
      'rejected',
    ]);
    const again = await service.as(visitor.token, 'POST', '/strokes', strokes[0]);
    expect(again.body.results[0]).toMatchObject({
      outcome: 'duplicate',
      strokeId: sent.body.results[0].strokeId,
    });
    const move = { roomId: other.roomId };
    const moved = await service.as(visitor.token, 'PATCH', `/strokes/${sent.body.results[0].strokeId}`, move);
    expect(moved.status).toBe(422);
  });

  test('as an owner sends none, and changes its own services alone', async () => {
    await grant(visitor.email, 'owner');
    const sent = await service.as(visitor.token, 'POST', '/strokes', strokeBody(fleet.roomId, 1));
    expect(sent.body.results[0].outcome).toBe('rejected');
    const theirs = await newService(service, fleet, '2026-05-01T10:00:00Z');
    const own = await newService(service, { ...fleet, token: visitor.token }, '2026-05-02T10:00:00Z');
    expect((await service.as(visitor.token, 'PATCH', `/services/${theirs}`, { notes: 'Mine.' })).status).toBe(
      403,
    );
    expect((await service.as(visitor.token, 'PATCH', `/services/${own}`, { notes: 'Mine.' })).status).toBe(
      200,
    );
  });

  test('is named where it acknowledged a warning', async () => {
    await grant(visitor.email, 'owner');
    const sent = await service.as(dealer.token, 'POST', '/strokes', strokeBody(fleet.roomId, 1));
    const { strokeId } = sent.body.results[0];
    const id = randomUUID();
    await service.pool.query(
      `insert into warnings (account_id, id, room_id, kind, severity, opened_at, first_stroke_id, latest_stroke_id,
         headline, evidence, checks, cautions)
       values ($1, $2, $3, 'rising-draw', 'watch', now(), $4, $4, 'Rising', '{}', '[]', '[]')`,
      [dealer.person.accountId, id, fleet.roomId, strokeId],
    );
    const path = `/warnings/${id}/acknowledgement`;
    expect((await service.as(visitor.token, 'POST', path)).status).toBe(200);
    const noted = await service.as(visitor.token, 'POST', path, { note: 'Heard it too.' });
    expect(noted.body.acknowledgement.note).toBe('Heard it too.');
    const read = await service.as(visitor.token, 'GET', `/warnings/${id}`);
    expect([read.status, read.body]).toEqual([200, noted.body]);
    const none = await service.as(visitor.token, 'POST', path, { note: null });
    expect([none.status, none.body.acknowledgement.note]).toEqual([200, null]);
    const many = await service.as(visitor.token, 'POST', '/acknowledgements', { warnings: [id], note: null });
    expect(many.status).toBe(200);
    const stranger = await service.newAccount();
    expect((await service.as(stranger.token, 'GET', `/warnings/${id}`)).status).toBe(404);
    expect((await service.as(dealer.token, 'GET', `/warnings/${randomUUID()}`)).status).toBe(404);
    const [warning] = (await service.as(dealer.token, 'GET', '/warnings')).body.items;
    expect(warning.acknowledgement.by).toBe(visitor.person.name);
  });

  test('keeps its Idempotency-Key one key wherever it sends', async () => {
    await grant(visitor.email, 'technician');
    const own = await newFleet(service, visitor.token);
    const post = (coach: string) =>
      service.request('POST', `/coaches/${coach}/rooms`, {
        token: visitor.token,
        body: { name: 'Den', drive: 'other', sides: ['main'] },
        headers: { 'idempotency-key': 'one' },
      });
    const first = await post(fleet.coachId);
    expect((await post(fleet.coachId)).body.id).toBe(first.body.id);
    expect((await post(own.coachId)).body.type).toBe('/problems/idempotency-key-reused');
  });
});

describe('a grant to an unknown address', () => {
  test('brings an invitation to an account of its own that shows the coach', async () => {
    const email = newEmail();
    const { invitation, ...given } = (await grant(email, 'technician')).body;
    expect(given.name).toBeNull();
    const accepted = await accept(invitation);
    expect(accepted.body.person).toMatchObject({ email, role: 'dealer' });
    expect(accepted.body.person.accountId).not.toBe(dealer.person.accountId);
    expect(await coachesOf(accepted.body.token)).toEqual([fleet.coachId]);
    const patched = await service.as(accepted.body.token, 'PATCH', `/rooms/${fleet.roomId}`, { name: 'Den' });
    expect(patched.status).toBe(200);
    expect((await service.as(accepted.body.token, 'POST', '/coaches', { name: 'Own' })).status).toBe(201);
    expect((await accept(invitation)).status).toBe(404);
  });

  test('is worth nothing once it is taken back', async () => {
    const { id, invitation } = (await grant(newEmail(), 'owner')).body;
    await service.as(dealer.token, 'DELETE', `/grants/${id}`);
    expect((await accept(invitation)).status).toBe(404);
  });

  test('who was granted two coaches sees both with the first invitation; those of others need theirs', async () => {
    const email = newEmail();
    const stranger = await service.newAccount();
    const theirs = await newFleet(service, stranger.token);
    const first = (await grant(email, 'owner')).body;
    const grantTo = (token: string, coachId: string) =>
      service.as(token, 'POST', `/coaches/${coachId}/grants`, { email, role: 'technician' });
    const second = (await grantTo(dealer.token, other.coachId)).body;
    const foreign = (await grantTo(stranger.token, theirs.coachId)).body;
    const { token } = (await accept(first.invitation)).body;
    expect((await coachesOf(token)).sort()).toEqual([fleet.coachId, other.coachId].sort());
    expect(
      (await service.as(token, 'PATCH', `/coaches/${other.coachId}`, { notes: 'Seen to.' })).status,
    ).toBe(200);
    const wrong = await accept(second.invitation, 'another long password');
    expect([wrong.status, wrong.body.type]).toEqual([401, '/problems/wrong-password']);
    expect((await accept(second.invitation)).status).toBe(200);
    expect((await accept(second.invitation)).status).toBe(404);
    expect((await coachesOf(token)).sort()).toEqual([fleet.coachId, other.coachId].sort());
    expect((await accept(foreign.invitation)).status).toBe(200);
    expect(await coachesOf(token)).toHaveLength(3);
  });

  test('given once more leads from either link to the latest role, and asks for the password that was chosen', async () => {
    const email = newEmail();
    const first = (await grant(email, 'technician')).body;
    const second = (await grant(email, 'owner')).body;
    const { token } = (await accept(first.invitation)).body;
    expect(await coachesOf(token)).toEqual([fleet.coachId]);
    expect((await service.as(token, 'PATCH', `/coaches/${fleet.coachId}`, { notes: 'Mine.' })).status).toBe(
      403,
    );
    const wrong = await accept(second.invitation, 'another long password');
    expect([wrong.status, wrong.body.detail]).toEqual([
      401,
      'Whoever this invitation is for has an account here already: send the password of that.',
    ]);
    expect((await accept(second.invitation)).status).toBe(200);
    await service.as(dealer.token, 'DELETE', `/grants/${second.id}`);
    expect(await coachesOf(token)).toEqual([]);
  });

  test('given once more and taken back leaves both links worth nothing', async () => {
    const email = newEmail();
    const given = [await grant(email, 'technician'), await grant(email, 'owner')];
    await service.as(dealer.token, 'DELETE', `/grants/${given[1].body.id}`);
    for (const { body } of given) expect((await accept(body.invitation)).status).toBe(404);
  });

  test('that has an account by now asks for its password, and takes nothing over', async () => {
    const email = newEmail();
    const first = (await grant(email, 'owner')).body.invitation;
    const stranger = await service.newAccount();
    const theirs = await newFleet(service, stranger.token);
    const body = { email, role: 'owner' };
    const second = (await service.as(stranger.token, 'POST', `/coaches/${theirs.coachId}/grants`, body)).body
      .invitation;
    const joined = (await accept(first)).body;
    expect(await coachesOf(joined.token)).toEqual([fleet.coachId]);
    expect((await accept(second, 'the password of another')).status).toBe(401);
    expect(await coachesOf(joined.token)).toEqual([fleet.coachId]);
    const accepted = await accept(second);
    expect(accepted.body.person.id).toBe(joined.person.id);
    expect((await coachesOf(joined.token)).sort()).toEqual([fleet.coachId, theirs.coachId].sort());
  });
});
