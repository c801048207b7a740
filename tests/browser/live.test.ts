import { beforeAll, expect, test } from 'vitest';
import { type Api, ask } from './support/api.ts';
import { addCoach, addRoom } from './support/fleet.ts';
import { describePages } from './support/place.ts';
import { strokeBody } from './support/strokeShape.ts';
import { signIn } from './support/visitor.ts';

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
    const { page, troubles } = await place.visit('/');
    await signIn(page, place.person);
    const watched = page.waitForEvent('websocket').then((socket) => socket.waitForEvent('framereceived'));
    await page.goto(`/rooms/${room.id}`);
    await watched;
    await page.getByText('No stroke has come in yet.').waitFor();
    await send(room.id, 1);
    await page.getByRole('region', { name: 'Strokes', exact: true }).locator('tbody a').waitFor();
    await page.getByText('1 stroke, last').waitFor();
    await page.getByRole('figure', { name: 'Side: front' }).waitFor();
    expect(troubles).toEqual([]);
  });

  test('of a comparison fills itself once there are strokes enough', async () => {
    const room = await addRoom(api, coach, 'Lounge');
    const work = { kind: 'lubricated', at: '2026-04-10T08:00:00Z' };
    const service = await ask<{ id: string }>(api, 'POST', `/rooms/${room.id}/services`, work);
    const { page } = await place.visit('/');
    await signIn(page, place.person);
    const watched = page.waitForEvent('websocket').then((socket) => socket.waitForEvent('framereceived'));
    await page.goto(`/rooms/${room.id}/compare?service=${service.id}`);
    await watched;
    await page.getByText('It takes two strokes before the work').waitFor();
    for (const day of [5, 6, 12, 13]) await send(room.id, day);
    await page
      .getByRole('figure', { name: 'front, going out' })
      .getByText('2 strokes before, 2 after')
      .waitFor();
  });

  test('asks for news where the feed cannot be opened', async () => {
    const room = await addRoom(api, coach, 'Den');
    const { page } = await place.visit('/');
    await signIn(page, place.person);
    await page.routeWebSocket('**/api/v1/live', (socket) => socket.close());
    await page.clock.install();
    await page.goto(`/rooms/${room.id}`);
    await page.getByText('No stroke has come in yet.').waitFor();
    await send(room.id, 1);
    await page.clock.fastForward(61_000);
    await page.getByText('1 stroke, last').waitFor();
  });
});
