import { beforeAll, describe, expect, test } from 'vitest';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';

const service = serviceOfTests({ worker: false });
let dealer: Member;
let owner: Member;
let technician: Member;
let stranger: Member;
let coach: string;
let room: string;
let logger: { id: string; token: string };

beforeAll(async () => {
  [dealer, stranger] = await Promise.all([service.newAccount(), service.newAccount()]);
  [owner, technician] = await Promise.all([
    service.newMember(dealer, 'owner'),
    service.newMember(dealer, 'technician'),
  ]);
  coach = (await service.as(dealer.token, 'POST', '/coaches', { name: 'Wren' })).body.id;
  const body = { name: 'Bedroom', drive: 'cable', sides: ['main'] };
  room = (await service.as(dealer.token, 'POST', `/coaches/${coach}/rooms`, body)).body.id;
  logger = (
    await service.as(dealer.token, 'POST', `/coaches/${coach}/loggers`, { name: 'Clamp', sensor: 'clamp' })
  ).body;
});

const WRITES = () =>
  [
    ['POST', '/coaches', { name: 'Another' }],
    ['PATCH', `/coaches/${coach}`, { name: 'Wren' }],
    ['POST', `/coaches/${coach}/rooms`, { name: 'Den', drive: 'other', sides: ['main'] }],
    ['PATCH', `/rooms/${room}`, { name: 'Bedroom' }],
    ['POST', `/coaches/${coach}/loggers`, { name: 'Shunt', sensor: 'shunt' }],
    ['PATCH', `/loggers/${logger.id}`, { name: 'Clamp' }],
  ] as const;

describe('an owner', () => {
  test('reads the coach and all that belongs to it, tokens aside', async () => {
    for (const path of ['/coaches', `/coaches/${coach}`, `/rooms/${room}`, `/loggers/${logger.id}`]) {
      const read = await service.as(owner.token, 'GET', path);
      expect(read.status).toBe(200);
      expect(read.text).not.toContain('sll_');
    }
  });

  test('may see and not change: 403; what it may not see: 404', async () => {
    for (const [method, path, body] of WRITES()) {
      const refused = await service.as(owner.token, method, path, body);
      expect([method, path, refused.status, refused.body.type]).toEqual([
        method,
        path,
        403,
        '/problems/not-allowed',
      ]);
    }
    const theirs = (await service.as(stranger.token, 'POST', '/coaches', { name: 'Foreign' })).body.id;
    expect((await service.as(owner.token, 'PATCH', `/coaches/${theirs}`, { name: 'Mine' })).status).toBe(404);
    expect((await service.as(owner.token, 'DELETE', `/coaches/${theirs}`)).status).toBe(404);
    expect((await service.as(owner.token, 'DELETE', `/coaches/${coach}`)).status).toBe(403);
    expect((await service.as(owner.token, 'DELETE', `/coaches/${crypto.randomUUID()}`)).status).toBe(404);
  });

  test('records services, changes and removes its own and nobody else’s', async () => {
    const body = { kind: 'cleaned', at: '2026-04-02T10:00:00Z' };
    const own = (await service.as(owner.token, 'POST', `/rooms/${room}/services`, body)).body.id;
    const others = (await service.as(technician.token, 'POST', `/rooms/${room}/services`, body)).body.id;
    const mayChange = async (who: { token: string }) => {
      const { items } = (await service.as(who.token, 'GET', `/rooms/${room}/services`)).body;
      return [own, others].map((id) => items.find((item: { id: string }) => item.id === id).mayChange);
    };
    expect(await mayChange(owner)).toEqual([true, false]);
    expect(await mayChange(technician)).toEqual([true, true]);
    expect((await service.as(owner.token, 'PATCH', `/services/${own}`, { notes: 'Soap.' })).status).toBe(200);
    expect((await service.as(owner.token, 'PATCH', `/services/${others}`, { notes: 'Soap.' })).status).toBe(
      403,
    );
    expect((await service.as(owner.token, 'DELETE', `/services/${others}`)).status).toBe(403);
    expect((await service.as(owner.token, 'DELETE', `/services/${own}`)).status).toBe(204);
    expect((await service.as(dealer.token, 'DELETE', `/services/${others}`)).status).toBe(204);
  });
});

test('a technician changes coaches, rooms and loggers', async () => {
  for (const [method, path, body] of WRITES()) {
    const answer = await service.as(technician.token, method, path, body);
    expect([method, path, answer.status]).toEqual([method, path, method === 'POST' ? 201 : 200]);
  }
});

test("a logger's token reads and changes nothing", async () => {
  for (const [method, path, body] of WRITES())
    expect([path, (await service.as(logger.token, method, path, body)).status]).toEqual([path, 401]);
  for (const path of ['/coaches', `/coaches/${coach}`, `/rooms/${room}`, `/loggers/${logger.id}`, '/session'])
    expect([path, (await service.as(logger.token, 'GET', path)).status]).toEqual([path, 401]);
});
