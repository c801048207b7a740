import { beforeEach, describe, expect, test } from 'vitest';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';

const service = serviceOfTests({ worker: false });
let member: Member;

beforeEach(async () => {
  member = await service.newAccount();
});

function settings(method: string, body?: object, token = member.token) {
  return service.as(token, method, '/settings', body);
}

describe('settings', () => {
  test('follow the device until they are set, and are kept field by field', async () => {
    expect((await settings('GET')).body).toEqual({ units: null, timeZone: null, locale: null });
    await settings('PATCH', { units: 'us', timeZone: 'America/Denver' });
    const both = { units: 'us', timeZone: 'America/Denver', locale: 'de-DE' };
    expect((await settings('PATCH', { locale: 'de-DE' })).body).toEqual(both);
    expect((await settings('GET')).body).toEqual(both);
    expect((await settings('PATCH', { units: null })).body).toEqual({ ...both, units: null });
    expect((await settings('PATCH', {})).status).toBe(200);
  });

  test('are the own ones, of nobody else', async () => {
    const colleague = await service.newMember(member, 'owner');
    await settings('PATCH', { units: 'us' }, colleague.token);
    expect((await settings('GET')).body.units).toBeNull();
  });

  test.each([
    ['/units', { units: 'imperial' }],
    ['/timeZone', { timeZone: 'Mars/Olympus' }],
    ['/timeZone', { timeZone: '+01:00' }],
    ['/timeZone', { timeZone: '' }],
    ['/locale', { locale: 'not a language' }],
    ['/locale', { locale: 7 }],
    ['/role', { role: 'dealer' }],
  ])('refuse %s %o', async (pointer, body) => {
    const answer = await settings('PATCH', body);
    expect([answer.status, answer.body.errors?.[0].pointer]).toEqual([422, pointer]);
  });
});

describe('a look over the coaches', () => {
  const lastLook = async (method: string) =>
    (await service.as(member.token, method, '/overview/look')).body.lastLookAt;
  const look = () => lastLook('POST');
  const hoursPass = (hours: number) =>
    service.pool.query(
      'update people set looked_at = looked_at - make_interval(hours => $1) where account_id = $2 and id = $3',
      [hours, member.person.accountId, member.person.id],
    );

  test('answers when the person last did on an earlier visit', async () => {
    expect(await look()).toBeNull();
    expect(await look()).toBeNull();
    await hoursPass(5);
    const earlier = await look();
    expect(Date.now() - Date.parse(earlier)).toBeGreaterThan(4 * 3_600_000);
    expect(await look()).toBe(earlier);
    await hoursPass(3);
    expect(await look()).toBe(earlier);
  });

  test('can be asked for without being one', async () => {
    expect(await lastLook('GET')).toBeNull();
    await look();
    expect(await lastLook('GET')).toBeNull();
    await hoursPass(5);
    const earlier = await lastLook('GET');
    expect(Date.now() - Date.parse(earlier)).toBeGreaterThan(4 * 3_600_000);
    await hoursPass(5);
    expect(await lastLook('GET')).not.toBe(earlier);
    const noted = await look();
    expect(await lastLook('GET')).toBe(noted);
  });
});
