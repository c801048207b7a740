import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import {
  HOUR_MS,
  MINUTE_MS,
  type Newsroom,
  newTold,
  newWarning,
  startNewsroom,
  type Told,
} from './noticesFixture.ts';

let news: Newsroom;
let told: Told;

beforeAll(async () => {
  news = await startNewsroom();
});
afterAll(() => news?.stop());
beforeEach(async () => {
  told = await newTold(news.service);
});

const soon = () => Date.now() + 2 * MINUTE_MS;
const mails = () => news.mailsTo(told.dealer.email);
const subjects = () => mails().map((mail) => /^Subject: (.*)\r$/m.exec(mail)?.[1]);

describe('a warning is told', () => {
  test('once, with what to check and to mind and a link, however often its room is analysed anew', async () => {
    const warning = newWarning({ severity: 'stop' });
    await told.find(warning);
    await news.tellAt(soon());
    for (let again = 0; again < 3; again++) {
      await told.find(warning);
      await news.tellAt(soon() + HOUR_MS);
    }
    expect(subjects()).toEqual(['Meadow Drift, Dinette: stop using it']);
    for (const part of [
      'The front side draws more than it did.',
      'Look at the rack.',
      'Keep everyone out of the travel.',
      `https://rooms.example.com/rooms/${told.fleet.roomId}`,
      'not a promise',
      'List-Unsubscribe-Post: List-Unsubscribe=One-Click',
    ])
      expect(mails()[0]).toContain(part);
    // Nobody should have begun before reading what to mind.
    const [mail] = mails();
    const places = [
      'Leave this room where it is',
      'Keep everyone out of the travel.',
      'Look at the rack.',
    ].map((part) => mail.indexOf(part));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places[0]).toBeGreaterThan(0);
  });

  test('once by ten processes that look and send at once', async () => {
    await told.find(newWarning());
    await Promise.all(Array.from({ length: 10 }, () => news.tellAt(soon())));
    expect(mails()).toHaveLength(1);
  });

  test('when it is new, worse, cleared and back, and not when it is milder', async () => {
    const warning = newWarning({ severity: 'watch' });
    const steps: Parameters<typeof newWarning>[0][] = [
      {},
      { severity: 'stop' },
      { severity: 'service' },
      { severity: 'stop' },
      { clearedAtMs: Date.now() },
      {},
    ];
    for (const [step, more] of steps.entries()) {
      await told.find({ ...warning, ...more });
      await news.tellAt(soon() + step * HOUR_MS);
    }
    expect(subjects()).toEqual([
      'Meadow Drift, Dinette: watch',
      'Meadow Drift, Dinette: worse: stop using it',
      'Meadow Drift, Dinette: a warning has cleared',
      'Meadow Drift, Dinette: watch',
    ]);
  });

  test('not before it had a minute to settle, and not at all when it was gone by then', async () => {
    await told.find(newWarning());
    await news.tellAt(Date.now() + 30_000);
    await told.find();
    await news.tellAt(soon());
    await news.tellAt(soon() + 48 * HOUR_MS);
    expect(mails()).toEqual([]);
  });

  test('not anew when a late stroke moves its opening, and as cleared when it stays away for a day', async () => {
    const warning = newWarning();
    await told.find(warning);
    await news.tellAt(soon());
    await told.find();
    await news.tellAt(soon() + HOUR_MS);
    await told.find(newWarning({ openedAtMs: warning.openedAtMs - HOUR_MS }));
    await news.tellAt(soon() + 2 * HOUR_MS);
    expect(mails()).toHaveLength(1);
    await told.find();
    await news.tellAt(soon() + 3 * HOUR_MS);
    await news.tellAt(soon() + 28 * HOUR_MS);
    expect(subjects()).toEqual([
      'Meadow Drift, Dinette: needs work',
      'Meadow Drift, Dinette: a warning has cleared',
    ]);
  });

  test('not when it is history', async () => {
    await told.find(newWarning({ openedAtMs: Date.now() - 8 * 24 * HOUR_MS }));
    await news.tellAt(soon());
    expect(mails()).toEqual([]);
  });

  test('in a message that no name of a thing can break', async () => {
    const name = 'Ada\r\nBcc: other@example.com\r\n\r\n.\r\nMAIL FROM';
    await news.service.as(told.dealer.token, 'PATCH', `/coaches/${told.fleet.coachId}`, { name });
    await told.find(newWarning());
    const before = news.mailServer.received.length;
    await news.tellAt(soon());
    expect(news.mailServer.received.length).toBe(before + 1);
    const [head] = mails()[0].split('\r\n\r\n', 1);
    expect(head).not.toMatch(/^Bcc:/im);
    expect(mails()[0]).toContain('Keep everyone out of the travel.');
  });

  test('of every room but one that it cannot be told of for a fault of ours', async () => {
    const other = await newTold(news.service);
    await told.find(newWarning());
    await other.find(newWarning());
    // A fault that strikes one room alone.
    await news.service.pool.query(
      `alter table told_warnings add constraint broken check (room_id <> '${told.fleet.roomId}')`,
    );
    await news.tellAt(soon());
    await news.service.pool.query('alter table told_warnings drop constraint broken');
    expect([mails().length, news.mailsTo(other.dealer.email).length]).toEqual([0, 1]);
    await news.tellAt(soon() + HOUR_MS);
    expect(mails()).toHaveLength(1);
  });

  test('with all else that is due in one message', async () => {
    await told.find(newWarning(), newWarning({ kind: 'late-side' }), newWarning({ kind: 'stall-spike' }));
    await news.tellAt(soon());
    expect(subjects()).toEqual(['3 notices']);
  });
});

describe('who is told', () => {
  test.each([
    ['of a severity below what they want', { warningsFrom: 'stop' }, {}, 0],
    ['of none, who never asked', { warningsFrom: null }, {}, 0],
    ['of the severity that they want', { warningsFrom: 'stop' }, { severity: 'stop' } as const, 1],
  ])('nobody %s', async (_, wanted, more, count) => {
    await told.set(wanted);
    await told.find(newWarning(more));
    await news.tellAt(soon());
    expect(mails()).toHaveLength(count);
  });

  test('nobody of what has cleared, who wants only what is open', async () => {
    await told.set({ cleared: false });
    const warning = newWarning();
    await told.find(warning);
    await news.tellAt(soon());
    await told.find({ ...warning, clearedAtMs: Date.now() });
    await news.tellAt(soon());
    expect(mails()).toHaveLength(1);
  });

  test('visitors as long as their grant lasts, and strangers never', async () => {
    const { service } = news;
    const [visitor, former, stranger] = [
      await service.newAccount(),
      await service.newAccount(),
      await service.newAccount(),
    ];
    for (const member of [visitor, former, stranger]) await told.set({ warningsFrom: 'watch' }, member);
    const grant = async (email: string) =>
      (
        await service.as(told.dealer.token, 'POST', `/coaches/${told.fleet.coachId}/grants`, {
          email,
          role: 'owner',
        })
      ).body.id;
    await grant(visitor.email);
    const ended = await grant(former.email);
    await told.find(newWarning());
    // Between the writing of the notice and its sending.
    await told.set({ quiet: quietNow() }, former);
    await news.tellAt(soon());
    await service.as(told.dealer.token, 'DELETE', `/grants/${ended}`);
    await told.set({ quiet: null }, former);
    await news.tellAt(soon() + HOUR_MS);
    expect([visitor, former, stranger].map(({ email }) => news.mailsTo(email).length)).toEqual([1, 0, 0]);
  });

  test('nobody of a coach that was deleted', async () => {
    await told.find(newWarning());
    await news.service.as(told.dealer.token, 'DELETE', `/coaches/${told.fleet.coachId}`);
    await news.tellAt(soon());
    expect(mails()).toEqual([]);
  });
});

/** From half an hour ago to in an hour and a half, UTC. */
function quietNow() {
  const clock = (ms: number) => new Date(ms).toISOString().slice(11, 16);
  return { from: clock(Date.now() - HOUR_MS / 2), to: clock(Date.now() + 1.5 * HOUR_MS) };
}

describe('quiet hours', () => {
  test('hold back what comes up, and let it go together when they are over', async () => {
    await told.set({ quiet: quietNow() });
    const warning = newWarning();
    await told.find(warning);
    await news.tellAt(soon());
    await told.find(warning, newWarning({ kind: 'late-side' }));
    await news.tellAt(soon() + HOUR_MS / 4);
    expect(mails()).toEqual([]);
    await news.tellAt(soon() + 2 * HOUR_MS);
    expect(subjects()).toEqual(['2 notices']);
  });

  test('tell the last of a warning that changed meanwhile', async () => {
    await told.set({ quiet: quietNow() });
    const warning = newWarning();
    await told.find(warning);
    await news.tellAt(soon());
    await told.find({ ...warning, clearedAtMs: Date.now() });
    await news.tellAt(soon() + 2 * HOUR_MS);
    expect(subjects()).toEqual(['Meadow Drift, Dinette: a warning has cleared']);
  });
});

describe('a mailbox', () => {
  const settings = async () => (await news.service.as(told.dealer.token, 'GET', '/settings/notices')).body;

  test('that is refused for good is paused and said; its owner goes on', async () => {
    const { refused } = news.mailServer;
    refused.add(told.dealer.email);
    await told.find(newWarning());
    await news.tellAt(soon());
    expect((await settings()).paused).toEqual({
      since: expect.any(String),
      because: `The mail server refused ${told.dealer.email} for good.`,
    });
    refused.delete(told.dealer.email);
    await told.find(newWarning({ kind: 'late-side' }));
    await news.tellAt(soon() + HOUR_MS);
    expect(mails()).toEqual([]);
    const resumed = await news.service.as(told.dealer.token, 'POST', '/settings/notices/resumption');
    expect(resumed.body.paused).toBeNull();
    await told.find(newWarning({ kind: 'stall-spike' }));
    await news.tellAt(soon() + 2 * HOUR_MS);
    expect(mails()).toHaveLength(1);
  });

  test('is tried again, further and further apart, while its server takes nothing, and given up after three days', async () => {
    await told.find(newWarning());
    const started = soon();
    const attempts = async () =>
      (
        await news.service.pool.query('select attempts, state from mail_notices where person_id = $1', [
          told.dealer.person.id,
        ])
      ).rows[0];
    news.mailServer.busy.add(told.dealer.email);
    for (const [minutes, made] of [
      [0, 1],
      [0.5, 1],
      [1, 2],
      [4, 2],
      [5, 3],
    ]) {
      await news.tellAt(started + minutes * MINUTE_MS);
      expect(await attempts()).toEqual({ attempts: made, state: 'waiting' });
    }
    await news.tellAt(started + 73 * HOUR_MS);
    expect((await attempts()).state).toBe('failed');
    expect((await settings()).paused).toBeNull();
  });

  test('gets the same message under the same id when nobody knows whether it was taken', async () => {
    await told.find(newWarning());
    await news.tellAt(soon());
    // As if the process had died in the moment after it was taken.
    await news.service.pool.query(
      "update mail_notices set state = 'waiting', due_at = now(), ended_at = null where person_id = $1",
      [told.dealer.person.id],
    );
    await told.find(newWarning({ kind: 'late-side' }));
    await news.tellAt(soon() + HOUR_MS);
    const ids = mails().map((mail) => /^Message-ID: (.*)\r$/m.exec(mail)?.[1]);
    expect([ids.length, new Set(ids).size]).toEqual([3, 2]);
  });
});

describe('the link in a message', () => {
  const link = () => {
    const header = /^List-Unsubscribe:\s+<https:\/\/rooms\.example\.com(\/unsubscribe\/slu_[\w-]+)>/m;
    return header.exec(mails()[0])?.[1] ?? '';
  };

  test('ends them with one click, and once more does no harm', async () => {
    await told.set({ digest: true, silentAfterDays: 3 });
    await told.find(newWarning());
    await news.tellAt(soon());
    const click = () =>
      news.service.request('POST', link(), {
        body: 'List-Unsubscribe=One-Click',
        headers: { 'content-type': 'application/x-www-form-urlencoded' },
      });
    expect((await click()).status).toBe(204);
    expect((await click()).status).toBe(204);
    const { body } = await news.service.as(told.dealer.token, 'GET', '/settings/notices');
    expect(body).toMatchObject({ warningsFrom: null, digest: false, silentAfterDays: null });
  });

  test('is no use once a letter of it is changed', async () => {
    await told.find(newWarning());
    await news.tellAt(soon());
    const letters = link();
    for (const place of [letters.length - 1, letters.length - 2, letters.indexOf('slu_') + 4]) {
      const changed = letters[place] === 'A' ? 'B' : 'A';
      const other = letters.slice(0, place) + changed + letters.slice(place + 1);
      expect([place, (await news.service.request('POST', other)).status]).toEqual([place, 404]);
    }
  });
});
