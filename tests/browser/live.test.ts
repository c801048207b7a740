import { beforeAll, expect, test } from 'vitest';
import { openLink } from '../support/loggerLink.ts';
import { violationsOn } from './support/accessibility.ts';
import { type Api, ask } from './support/api.ts';
import { addCoach, addRoom, allAnalysed } from './support/fleet.ts';
import { describePages } from './support/place.ts';
import { strokeBody } from './support/strokeShape.ts';
import { signIn, standsStill } from './support/visitor.ts';

const SIDES = [
  { side: 'front', runningAmps: 9 },
  { side: 'rear', runningAmps: 8.2 },
];

describePages('a page that stays open', (place) => {
  let api: Api;
  let coach: { id: string };
  let logger: Api;
  beforeAll(async () => {
    api = await place.api();
    coach = await addCoach(api, 'Juniper 31');
    const { token } = await ask<{ token: string }>(api, 'POST', `/coaches/${coach.id}/loggers`, {
      name: 'Step board',
      sensor: 'clamp',
    });
    logger = { url: api.url, token };
  });

  const send = (roomId: string, day: number) => {
    const at = new Date(Date.UTC(2026, 3, day, 15));
    return ask(logger, 'POST', '/strokes', strokeBody(roomId, `${roomId}/${day}`, at, 'extend', SIDES));
  };

  test('of a room shows a new stroke by itself, without asking for it', async () => {
    const room = await addRoom(api, coach, 'Bedroom');
    // The page of the room alone: another's feed may still be opened and go with that page.
    const { page, troubles } = await place.visit(`/rooms/${room.id}`);
    const watched = page.waitForEvent('websocket').then((socket) => socket.waitForEvent('framereceived'));
    await signIn(page, place.person);
    await watched;
    await page.getByText('No stroke has come in yet.').waitFor();
    await send(room.id, 1);
    await page.getByRole('region', { name: 'Strokes', exact: true }).locator('tbody a').waitFor();
    await page.getByText('1 stroke, last').waitFor();
    await page.getByRole('figure', { name: 'Side: front' }).waitFor();
    expect(troubles).toEqual([]);
  });

  test('of a room keeps the strokes that were asked for when a new one comes in', async () => {
    const room = await addRoom(api, coach, 'Den');
    const days = Array.from({ length: 15 }, (_, i) => i + 1);
    for (const day of days) await send(room.id, day);
    await allAnalysed(api, room);
    const { page, troubles } = await place.visitAs(place.person, '/');
    await page.goto(`/rooms/${room.id}`);
    const strokes = page.getByRole('region', { name: 'Strokes', exact: true });
    await strokes.getByRole('button', { name: 'Show more' }).click();
    await strokes
      .locator('tbody tr')
      .nth(days.length - 1)
      .waitFor();
    await send(room.id, days.length + 1);
    await page.getByText('16 strokes, last').waitFor();
    await strokes.locator('tbody tr').nth(days.length).waitFor();
    expect(await strokes.locator('tbody tr').count()).toBe(days.length + 1);
    expect(troubles).toEqual([]);
  });

  test('of a room shows a stroke while it runs, and what became of it', async () => {
    const room = await addRoom(api, coach, 'Study');
    const { page, troubles } = await place.visitAs(place.person, '/');
    await page.goto(`/rooms/${room.id}`);
    await page.getByText('No stroke has come in yet.').waitFor();
    const { key, sides, ...rest } = strokeBody(
      room.id,
      'under way',
      new Date('2026-05-02T15:00:00Z'),
      'extend',
      [...SIDES],
    );
    const pieces = sides.flatMap(({ side, amps }) => [
      { type: 'samples', key, side, amps: amps.slice(0, 500) },
      { type: 'samples', key, side, amps: amps.slice(500) },
    ]);
    const inOrder = [pieces[0], pieces[2], pieces[1], pieces[3]].map((piece, seq) => ({ ...piece, seq }));
    const link = await openLink(api.url, logger.token);
    try {
      const { roomId, direction, startedAt } = rest;
      const begun = sides.map(({ side, rateHz }) => ({ side, rateHz }));
      link.say({ type: 'begin', key, roomId, direction, startedAt, sides: begun });
      for (const piece of inOrder.slice(0, 2)) link.say(piece);
      const running = page.getByRole('region', { name: 'Running now' });
      await running
        .getByText(/Recorded so far: 10\.0\ss\. The front side: now \d\.\d\sA, highest 2\d\.\d\sA\./)
        .waitFor();
      await running.locator('canvas').waitFor();
      expect(await violationsOn(page)).toEqual([]);
      for (const piece of inOrder.slice(2)) link.say(piece);
      await running.getByText(/Recorded so far: 21\.\d\ss/).waitFor();
      link.say({ type: 'end', key });
      const finished = page.getByRole('region', { name: 'Just finished' });
      await finished.getByText('The stroke going out is worked out.').waitFor();
      expect(await running.count()).toBe(0);
      await finished.getByRole('figure', { name: 'Along the travel' }).locator('canvas').waitFor();
      expect(await violationsOn(page)).toEqual([]);
      await finished.getByRole('link', { name: 'Open this stroke' }).click();
      await page.getByRole('heading', { level: 1, name: 'Stroke going out' }).waitFor();
    } finally {
      await link.drop();
    }
    expect(troubles).toEqual([]);
  });

  test('of a comparison fills itself once there are strokes enough', async () => {
    const room = await addRoom(api, coach, 'Lounge');
    const work = { kind: 'lubricated', at: '2026-04-10T08:00:00Z' };
    const service = await ask<{ id: string }>(api, 'POST', `/rooms/${room.id}/services`, work);
    // Opened by its address: no other page has a feed that could be taken for this one's.
    const { page } = await place.visit(`/rooms/${room.id}/compare?service=${service.id}`);
    const watched = new Promise((resolve) => {
      page.on('websocket', (socket) => socket.on('framereceived', resolve));
    });
    await signIn(page, place.person);
    await watched;
    await page.getByText('It takes two strokes before the work').waitFor();
    for (const day of [5, 6, 12, 13]) await send(room.id, day);
    await page
      .getByRole('figure', { name: 'The front side, going out' })
      .getByText('2 strokes before, 2 after')
      .waitFor();
  });

  test('of a room says that a running stroke is not seen any more while there is no network', async () => {
    const room = await addRoom(api, coach, 'Nook');
    const { page } = await place.visitAs(place.person, '/');
    await page.goto(`/rooms/${room.id}`);
    await page.getByText('No stroke has come in yet.').waitFor();
    const link = await openLink(api.url, logger.token);
    try {
      const [side] = SIDES;
      const begun = {
        key: 'lost on its way',
        roomId: room.id,
        direction: 'extend',
        startedAt: '2026-05-02T15:00:00Z',
      };
      link.say({ type: 'begin', ...begun, sides: [{ side: side.side, rateHz: 50 }] });
      link.say({ type: 'samples', key: begun.key, side: side.side, amps: [0, 20, 9, 9], seq: 0 });
      const running = page.getByRole('region', { name: 'Running now' });
      await running.getByText(/Recorded so far/).waitFor();
      const lost = running.getByText('The connection is lost.');
      expect(await lost.count()).toBe(0);
      await page.context().setOffline(true);
      await lost.waitFor();
      const anew = page.waitForEvent('websocket');
      await page.context().setOffline(false);
      await anew;
      await lost.waitFor({ state: 'detached' });
      await running.getByText(/Recorded so far/).waitFor();
    } finally {
      await link.drop();
    }
  });

  test('of a room notices a link that went without a word, and opens another', async () => {
    const room = await addRoom(api, coach, 'Alcove');
    const { page } = await place.visitAs(place.person, '/', { turnsClock: true });
    await page.clock.install();
    const first = { opened: 0, said: 0, asked: 0 };
    await page.routeWebSocket('**/api/v1/live', (socket) => {
      const service = socket.connectToServer();
      first.opened += 1;
      const isFirst = first.opened === 1;
      let isGone = false;
      socket.onMessage((message) => {
        if (isFirst) first.asked += 1;
        if (!isGone) service.send(message);
      });
      service.onMessage((message) => {
        if (isFirst) first.said += 1;
        if (!isGone) socket.send(message);
        // As where a phone left the network: neither end is told.
        isGone = isFirst;
      });
    });
    await page.goto(`/rooms/${room.id}`);
    await page.getByText('No stroke has come in yet.').waitFor();
    await expect.poll(() => first.said).toBe(1);
    await send(room.id, 1);
    await allAnalysed(api, room);
    await page.clock.fastForward('01:01');
    await expect.poll(() => first.asked).toBe(2);
    expect(first.opened).toBe(1);
    await page.clock.fastForward('00:21');
    await page.getByText('1 stroke, last').waitFor();
    expect(first.opened).toBe(2);
  });

  test('of a room shows what it was answered, also where news come faster than answers', async () => {
    const room = await addRoom(api, coach, 'Loft');
    const { page } = await place.visitAs(place.person, '/');
    await page.goto(`/rooms/${room.id}`);
    await page.getByText('No stroke has come in yet.').waitFor();
    let askAgain = () => {};
    const askedAgain = new Promise<void>((resolve) => {
      askAgain = resolve;
    });
    let times = 0;
    await page.route(`**/api/v1/rooms/${room.id}/status`, async (route) => {
      times += 1;
      // The first answer comes after the second question, which is not answered at all.
      if (times > 1) return askAgain();
      await askedAgain;
      await route.continue();
    });
    await send(room.id, 1);
    await expect.poll(() => times).toBe(1);
    await send(room.id, 2);
    await page.getByText('2 strokes, last').waitFor();
    expect(times).toBeGreaterThan(1);
  });

  test('of the lot shows a coach that was added elsewhere, with a feed and without', async () => {
    const { page } = await place.visitAs(place.person, '/', { turnsClock: true });
    await page.clock.install();
    await page.goto('/');
    const lot = page.getByRole('list', { name: 'List of coaches' });
    await lot.getByText('Juniper 31').waitFor();
    await standsStill(page);
    await addCoach(api, 'Elsewhere 1');
    await page.clock.fastForward(61_000);
    await lot.getByText('Elsewhere 1').waitFor();

    await page.routeWebSocket('**/api/v1/live', (socket) => socket.close());
    const room = await addRoom(api, coach, 'Attic');
    await page.goto('/');
    const line = lot.getByRole('link', { name: /^Attic/ });
    await line.getByText('No stroke yet').waitFor();
    await standsStill(page);
    await send(room.id, 1);
    await allAnalysed(api, room);
    await page.clock.fastForward(61_000);
    await line.getByText('Last stroke').waitFor();
  });

  test('asks for news where the feed cannot be opened', async () => {
    const room = await addRoom(api, coach, 'Den');
    const { page } = await place.visitAs(place.person, '/', { turnsClock: true });
    await page.routeWebSocket('**/api/v1/live', (socket) => socket.close());
    await page.clock.install();
    await page.goto(`/rooms/${room.id}`);
    await page.getByText('No stroke has come in yet.').waitFor();
    await standsStill(page);
    await send(room.id, 1);
    await page.clock.fastForward(61_000);
    await page.getByText('1 stroke, last').waitFor();
  });
});
