import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { violationsOn } from './support/accessibility.ts';
import { type Api, ask } from './support/api.ts';
import { PHONE } from './support/devices.ts';
import { addCoach, allAnalysed, sendDays } from './support/fleet.ts';
import { describePages } from './support/place.ts';
import { strokeBody } from './support/strokeShape.ts';

const HEALTHY_DAYS = 12;
const WORSE_DAYS = 3;
/** Slow enough to be a trend, quick enough to be told. */
const RISE_A_DAY = 0.006;
const RISING_DAYS = 20;

describePages('a technician beside the coach', (place) => {
  let api: Api;
  let strokes: string[];
  let risingId: string;
  let longId: string;

  async function addGearedRoom(coach: { id: string }, name: string) {
    return ask<{ id: string }>(api, 'POST', `/coaches/${coach.id}/rooms`, {
      name,
      drive: 'in-wall',
      sides: ['front', 'rear'],
      travelMetres: 0.96,
      gearTeeth: 16,
      rackPitchMm: 5,
    });
  }

  beforeAll(async () => {
    api = await place.api();
    const coach = await addCoach(api, 'Juniper 31');
    const room = await addGearedRoom(coach, 'Bedroom');
    const rear = { side: 'rear', runningAmps: 8.2 };
    const worse = { side: 'front', runningAmps: 12.8, spikeAt: 0.4 };
    strokes = await sendDays(
      api,
      coach,
      room,
      (day) => [day < HEALTHY_DAYS ? { side: 'front', runningAmps: 8.5 } : worse, rear],
      HEALTHY_DAYS + WORSE_DAYS,
    );
    const rising = await addGearedRoom(coach, 'Lounge');
    risingId = rising.id;
    const riseOf = (day: number) => 1 + RISE_A_DAY * Math.max(0, day - HEALTHY_DAYS);
    await sendDays(
      api,
      coach,
      rising,
      (day) => [{ side: 'front', runningAmps: 8.5 * riseOf(day) }, rear],
      HEALTHY_DAYS + RISING_DAYS,
    );
    const alone = await addGearedRoom(coach, 'Den');
    longId = await addLongStroke(alone.id);
    for (const each of [room, rising, alone]) await allAnalysed(api, each);
  });

  /** 200,000 samples a side, as many as a stroke may have: forty seconds at 5 kHz, the only one of its room. */
  async function addLongStroke(roomId: string): Promise<string> {
    const short = strokeBody(roomId, 'long', new Date('2026-05-01T15:00:00Z'), 'extend', [
      { side: 'front', runningAmps: 8.5 },
    ]);
    const [{ side, amps }] = short.sides;
    const long = Array.from({ length: 200_000 }, (_, i) => amps[Math.floor((i * amps.length) / 200_000)]);
    const body = { ...short, supply: undefined, sides: [{ side, rateHz: 5000, amps: long }] };
    const { results } = await ask<{ results: { strokeId: string }[] }>(api, 'POST', '/strokes', body);
    return results[0].strokeId;
  }

  async function openStroke(id: string, options = {}): Promise<Page> {
    const { page } = await place.visitAs(place.person, `/strokes/${id}`, options);
    await travelOf(page).locator('canvas').waitFor();
    return page;
  }
  const travelOf = (page: Page) => page.getByRole('figure', { name: 'Along the travel' });
  const latestExtend = () => strokes[strokes.length - 2];

  test('sees a stroke over its normal, where it leaves it, and the turns of the gear', async () => {
    const page = await openStroke(latestExtend());
    const travel = travelOf(page);
    await travel
      .getByText(/The front side: mostly about 1[23]\.\d\sA.*Outside its normal: above from \d+% to \d+%/)
      .waitFor();
    await travel.getByText(/The rear side: mostly about 8\.\d\sA.*Nowhere outside its normal\./).waitFor();
    await travel.getByText('One turn of the gear moves the room by 8 cm').waitFor();
    await travel.getByText('a whole turn of the gear, from fully in').waitFor();
    await travel.getByText('As a table').click();
    const row = travel.getByRole('row', { name: /^51% \(49 cm\)/ });
    expect(await row.textContent()).toMatch(/1[23]\.\d\sA\s*[78]\.\d\sA to \d+\.\d\sA/);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violationsOn(page)).toEqual([]);
  });

  test('lays other strokes over it, up to eight in one picture, and can send that to somebody', async () => {
    const page = await openStroke(latestExtend());
    await page.getByText('Compare with other strokes').click();
    const boxes = page.locator('.picks input');
    // Those that ran the same way are offered, all others on demand.
    await boxes.nth(8).waitFor();
    expect(await page.locator('.picks .remarks', { hasText: 'Coming in' }).count()).toBe(0);
    await page.getByLabel('Those that ran the other way, too').check();
    await page.locator('.picks .remarks', { hasText: 'Coming in' }).first().waitFor();
    await page.getByLabel('Those that ran the other way, too').uncheck();
    await page.locator('.picks .remarks', { hasText: 'Coming in' }).first().waitFor({ state: 'detached' });
    for (let i = 0; i < 7; i++) await boxes.nth(i).check();
    await travelOf(page).locator('.key-letter').nth(6).waitFor();
    expect(await travelOf(page).locator('.key-letter').allTextContents()).toEqual([...'BCDEFGH']);
    expect(await boxes.nth(8).isDisabled()).toBe(true);
    expect(await violationsOn(page)).toEqual([]);
    await page.reload();
    await travelOf(page).locator('.key-letter').nth(6).waitFor();
    await travelOf(page).getByText('As a table').click();
    await travelOf(page).getByRole('columnheader', { name: 'B: front' }).waitFor();
    await page.getByRole('button', { name: 'Remove all' }).click();
    expect(await travelOf(page).locator('.key-letter').count()).toBe(0);
    expect(new URL(page.url()).search).toBe('');
  });

  test('looks closer by keyboard alone, and back', async () => {
    const page = await openStroke(latestExtend());
    const travel = travelOf(page);
    await travel.getByRole('button', { name: 'Closer' }).focus();
    await page.keyboard.press('Enter');
    await travel.getByText('Shown: 24% to 76%').waitFor();
    await page.keyboard.press('ArrowRight');
    await travel.getByText(/^Shown: 3\d% to 8\d%$/).waitFor();
    await page.keyboard.press('+');
    await travel.getByText(/^Shown: 5\d% to 7\d%$/).waitFor();
    await page.keyboard.press('0');
    await travel.getByText(/^Shown/).waitFor({ state: 'detached' });
  });

  test('stays as close when another stroke is laid over', async () => {
    const page = await openStroke(latestExtend());
    const travel = travelOf(page);
    await travel.getByRole('button', { name: 'Closer' }).click();
    await travel.getByText('Shown: 24% to 76%').waitFor();
    await page.getByText('Compare with other strokes').click();
    await page.locator('.picks input').first().check();
    await travel.locator('.key-letter').first().waitFor();
    await travel.locator('.u-over').hover({ position: { x: 2, y: 100 } });
    await travel.getByText(/^2[45]% \(\d+\scm\): front .* B \d/).waitFor();
    await travel.getByText('Shown: 24% to 76%').waitFor();
  });

  test('looks closer by dragging over the picture', async () => {
    const page = await openStroke(latestExtend());
    const over = travelOf(page).locator('.u-over');
    await over.scrollIntoViewIfNeeded();
    const box = await over.boundingBox();
    if (box === null) throw new Error('The picture has no place.');
    const y = box.y + box.height / 2;
    await page.mouse.move(box.x + box.width * 0.3, y);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.6, y, { steps: 5 });
    await page.mouse.up();
    await travelOf(page)
      .getByText(/^Shown: (29|30)% to (60|61)%$/)
      .waitFor();
    await travelOf(page).getByRole('button', { name: 'Show all' }).click();
    await travelOf(page)
      .getByText(/^Shown/)
      .waitFor({ state: 'detached' });
  });

  test('looks closer with two fingers on a phone', async () => {
    const page = await openStroke(latestExtend(), PHONE);
    const over = travelOf(page).locator('.u-over');
    await over.scrollIntoViewIfNeeded();
    const box = await over.boundingBox();
    if (box === null) throw new Error('The picture has no place.');
    const devtools = await page.context().newCDPSession(page);
    const y = box.y + box.height / 2;
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', parts: readonly number[]) =>
      devtools.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: parts.map((part, id) => ({ x: box.x + box.width * part, y, id })),
      });
    await touch('touchStart', [0.45, 0.55]);
    for (const apart of [0.1, 0.15, 0.2, 0.25]) await touch('touchMove', [0.5 - apart, 0.5 + apart]);
    await touch('touchEnd', []);
    await travelOf(page)
      .getByText(/^Shown: [34]\d% to [56]\d%$/)
      .waitFor();
  });

  test('reads when a slow rise will need work, on the trend', async () => {
    const { page } = await place.visitAs(place.person, `/rooms/${risingId}`);
    const front = page.getByRole('figure', { name: 'Side: front' });
    await front
      .getByText(
        /it reaches the service line of 10\.\d\sA in about \d+ more strokes this way, .* \(80% sure\)\./,
      )
      .waitFor();
    await front.getByText('if it goes on like this: when the service line is reached').waitFor();
    await front.locator('canvas').waitFor();
    await front.getByRole('button', { name: 'Closer' }).click();
    await front.getByText(/^Shown: .* to /).waitFor();
  });

  test('opens a stroke of 200,000 samples thinned, the only one of its room, and whole once looked at closer', async () => {
    const { page, troubles } = await place.visitAs(place.person, '/');
    const thin = page.waitForResponse(/\/trace\?points=4000$/);
    await page.goto(`/strokes/${longId}`);
    const { sides } = (await (await thin).json()) as { sides: { amps: number[] }[] };
    expect(sides[0].amps.length).toBeLessThanOrEqual(4000);
    const time = page.getByRole('figure', { name: 'Over time' });
    await time.locator('canvas').waitFor();
    await travelOf(page).getByText("This room's normal along the travel is not known yet.").waitFor();
    const whole = page.waitForResponse(/\/trace$/);
    await time.getByRole('button', { name: 'Closer' }).click();
    expect((await whole).status()).toBe(200);
    await time.getByText(/^Shown: \d/).waitFor();
    expect(troubles).toEqual([]);
  });
});
