import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { HOUR_MS, type Newsroom, newTold, newWarning, startNewsroom, type Told } from './noticesFixture.ts';

let news: Newsroom;
let told: Told;

beforeAll(async () => {
  news = await startNewsroom();
});
afterAll(() => news?.stop());
beforeEach(async () => {
  told = await newTold(news.service, { digest: true });
});

/** A Monday long enough ahead that nothing of the tests is in its way. */
const MONDAY_MS = Date.parse('2031-05-05T00:00:00Z');

async function weekAt(ms: number): Promise<void> {
  await news.lookAround(ms);
  await news.tellAt(ms);
}
const mails = () => news.mailsTo(told.dealer.email);

/** What an analysis writes of a room that needs work. */
const needsWork = () =>
  news.service.pool.query(
    `insert into room_results (account_id, room_id, summary)
     values ($1, $2, '{"verdict": "stop", "headline": "The motor stalls.", "strokes": 20, "openWarnings": [{}]}')
     on conflict (account_id, room_id) do update set summary = excluded.summary`,
    [told.dealer.person.accountId, told.fleet.roomId],
  );

describe('the week of a dealer', () => {
  test('comes once, on Monday from seven where it is', async () => {
    await needsWork();
    for (const hours of [-1, 6.5, 7.5, 8, 20, 30]) await weekAt(MONDAY_MS + hours * HOUR_MS);
    expect(mails()).toHaveLength(1);
    await news.service.as(told.dealer.token, 'PATCH', '/settings', { timeZone: 'America/Denver' });
    const next = MONDAY_MS + 7 * 24 * HOUR_MS;
    await weekAt(next + 12.5 * HOUR_MS);
    expect(mails()).toHaveLength(1);
    await weekAt(next + 13.5 * HOUR_MS);
    expect(mails()).toHaveLength(2);
  });

  test('names the rooms that need work, with the caution that belongs to them, and who is not reached', async () => {
    await needsWork();
    const colleague = await news.service.newMember(told.dealer, 'owner');
    await news.service.pool.query(
      "update people set mail_paused_at = now(), mail_paused_because = 'refused' where id = $1",
      [colleague.person.id],
    );
    await weekAt(MONDAY_MS + 8 * HOUR_MS);
    for (const part of [
      'Rooms: 1 to stop using',
      'Meadow Drift, Dinette: stop using it.',
      'The motor stalls.',
      `Mail to ${colleague.email} is paused`,
      'Keep everyone, and every hand, out of the travel',
      'not a promise',
    ])
      expect(mails()[0]).toContain(part);
  });

  test('is for dealers alone, and for those who want it', async () => {
    const owner = await news.service.newMember(told.dealer, 'owner');
    await told.set({ digest: true }, owner);
    await told.set({ digest: false });
    await weekAt(MONDAY_MS + 8 * HOUR_MS);
    expect([mails(), news.mailsTo(owner.email)]).toEqual([[], []]);
  });

  test('is not told to somebody who wanted it no more by the time', async () => {
    await news.lookAround(MONDAY_MS + 8 * HOUR_MS);
    await told.set({ digest: false });
    await news.tellAt(MONDAY_MS + 8 * HOUR_MS);
    expect(mails()).toEqual([]);
  });
});

describe('what a person may set', () => {
  test.each([
    ['/warningsFrom', { warningsFrom: 'all' }],
    ['/cleared', { cleared: null }],
    ['/quiet/from', { quiet: { from: '24:00', to: '07:00' } }],
    ['/quiet/to', { quiet: { from: '22:00' } }],
    ['/quiet/to', { quiet: { from: '22:00', to: '22:00' } }],
    ['/silentAfterDays', { silentAfterDays: 0 }],
    ['/silentAfterDays', { silentAfterDays: 1.5 }],
    ['/paused', { paused: null }],
    ['/email', { email: 'other@example.com' }],
  ])('not %s as in %o', async (pointer, body) => {
    const answer = await news.service.as(told.dealer.token, 'PATCH', '/settings/notices', body);
    expect([answer.status, answer.body.errors?.[0].pointer]).toEqual([422, pointer]);
  });

  test('what is left out stays', async () => {
    await told.set({ warningsFrom: 'stop', quiet: { from: '22:00', to: '07:30' } });
    await told.set({ silentAfterDays: 3 });
    const { body } = await news.service.as(told.dealer.token, 'GET', '/settings/notices');
    expect(body).toEqual({
      warningsFrom: 'stop',
      cleared: true,
      quiet: { from: '22:00', to: '07:30' },
      digest: true,
      silentAfterDays: 3,
      email: told.dealer.email,
      mails: false,
      paused: null,
    });
  });
});

test('attempts are counted by what came of them', async () => {
  await told.set({ warningsFrom: 'watch' });
  await told.find(newWarning());
  await news.tellAt(Date.now() + HOUR_MS);
  const { text } = await news.service.request('GET', '/metrics');
  expect(text).toMatch(/^slideload_notices_total\{channel="mail",outcome="sent"\} [1-9]/m);
});
