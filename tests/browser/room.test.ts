import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { ask } from './support/api.ts';
import { NARROW, PHONE } from './support/devices.ts';
import { addCoach, addFleet, addRoom, allAnalysed, type Fleet } from './support/fleet.ts';
import { describePages } from './support/place.ts';
import { strokeBody } from './support/strokeShape.ts';
import { signIn } from './support/visitor.ts';

describePages('a room that got worse', (place) => {
  let fleet: Fleet;
  beforeAll(async () => {
    fleet = await addFleet(await place.api());
  });

  async function openRoom(): Promise<{ page: Page; troubles: string[] }> {
    const { page, troubles } = await place.visitAs(place.person, '/');
    await page.getByRole('link', { name: /^Bedroom/ }).click();
    await page.getByRole('heading', { level: 1, name: 'Bedroom' }).waitFor();
    return { page, troubles };
  }

  test('stands before the others in the list, with its verdict in a word', async () => {
    const { page } = await place.visitAs(place.person, '/');
    const coach = page.getByRole('list', { name: 'List of coaches' }).locator('> li').first();
    await coach.getByRole('heading', { name: 'Juniper 31' }).waitFor();
    const rooms = await coach.getByRole('listitem').allTextContents();
    expect(rooms).toHaveLength(2);
    expect(rooms[0]).toMatch(/^Bedroom/);
    expect(rooms[0]).toMatch(/Watch|Needs work|Stop/);
    expect(rooms[0]).toMatch(/Last stroke/);
    expect(rooms[1]).toMatch(/^Dinette/);
  });

  test('on a weak supply shows the volts, the limit and since when', async () => {
    const api = await place.api();
    const room = await addRoom(api, await addCoach(api, 'Weak 24'), 'Den');
    const stroke = (day: number) => {
      const at = new Date(Date.parse('2026-05-01T15:00:00Z') + day * 86_400_000);
      const way = day % 2 === 0 ? 'extend' : 'retract';
      const body = strokeBody(room.id, `weak/${day}`, at, way, [{ side: 'front', runningAmps: 8.5 }]);
      return { ...body, supply: { rateHz: 10, volts: Array(216).fill(day < 3 ? 12.5 : 9.846) } };
    };
    await ask(api, 'POST', '/strokes', [0, 1, 2, 3, 4, 5].map(stroke));
    await allAnalysed(api, room);
    const { page } = await place.visitAs(place.person, `/rooms/${room.id}`);
    const warning = page.getByRole('article').filter({ hasText: 'Supply too low while running' });
    await warning.getByText('held only 9.8 V').waitFor();
    // One word for it, of the room and of its only warning.
    const word = await page.locator('.answer .verdict').textContent();
    expect(await warning.locator('.warning-kind strong').textContent()).toBe(word);
    const picture = warning.getByRole('img', {
      name: /^Supply while running, 6 strokes: 9\.8\sV to 12\.5\sV\. 3 were below the limit of 10\.5\sV/,
    });
    await picture.waitFor();
    expect(await picture.locator('.small-beyond').count()).toBe(3);
    expect(await picture.locator('.small-limit, .small-place').count()).toBe(2);
    // Its scale and its days stand around it.
    const around = warning.locator('.small-picture span');
    expect((await around.allInnerTexts()).map((text) => text.replaceAll(/\s/g, ' '))).toEqual([
      '12.5 V',
      '10 V',
      '7.5 V',
      '1 May 2026',
      '6 May 2026',
    ]);
    expect(await warning.getByRole('term').allTextContents()).toEqual(['Limit']);
    // What comes in while the page stands is in the picture, too.
    await ask(api, 'POST', '/strokes', stroke(6));
    await warning.getByRole('img', { name: /^Supply while running, 7 strokes: .* 4 were below/ }).waitFor();
  });

  test('that is heavy from the start shows what it draws, not that this is its normal', async () => {
    const api = await place.api();
    const room = await addRoom(api, await addCoach(api, 'Heavy 24'), 'Den');
    const strokes = [0, 1, 2, 3, 4, 5].map((day) => {
      const at = new Date(Date.parse('2026-05-01T15:00:00Z') + day * 86_400_000);
      const way = day % 2 === 0 ? 'extend' : 'retract';
      return strokeBody(room.id, `heavy/${day}`, at, way, [{ side: 'front', runningAmps: 19 }]);
    });
    await ask(api, 'POST', '/strokes', strokes);
    await allAnalysed(api, room);
    const { page } = await place.visitAs(place.person, `/rooms/${room.id}`);
    const warning = page.getByRole('article').filter({ hasText: 'Heavy from the start' });
    await warning
      .getByRole('img', { name: /^The front side: 3 strokes going out, 1[89]\.\d\sA to (19|2\d)\.\d\sA\.$/ })
      .waitFor();
  });

  test('tells its verdict, what was measured, and cautions with the checks', async () => {
    const { page, troubles } = await openRoom();
    const answer = page.getByRole('region', { name: /^(Watch|Needs work|Stop)$/ });
    await answer.waitFor();
    expect(await answer.textContent()).toMatch(/44 strokes/);
    await answer.getByRole('link', { name: 'What to check, and what not to do' }).click();
    await page.waitForURL('**#checks');
    await page.waitForFunction(
      'document.getElementById("checks").getBoundingClientRect().top < innerHeight / 2',
    );
    const warning = page.getByRole('article').filter({ hasText: 'Drawing more than it used to' }).first();
    expect(await warning.getByRole('heading', { level: 4 }).allTextContents()).toEqual([
      'What was measured',
      'How sure this is',
      'What it likely is',
      'Before you touch anything',
      'What to check, in this order',
      'What not to do, and what to remember',
      'When to stop using the room',
    ]);
    await warning
      .getByRole('img', { name: /^\d+ strokes going out\. \d+ were outside the normal of its time/ })
      .waitFor();
    const clean = warning.getByRole('listitem').filter({ hasText: 'Clean the wall racks' });
    await clean.getByText('Disconnect the supply').waitFor();
    await warning.getByRole('link', { name: 'Latest stroke' }).waitFor();
    expect(troubles).toEqual([]);
  });

  test('leads from the coach to what is to be checked, not to the top of the room', async () => {
    const { page } = await place.visitAs(place.person, `/coaches/${fleet.coach.id}`);
    await page.getByRole('link', { name: 'What to check, and what not to do' }).first().click();
    await page.getByRole('heading', { level: 1, name: 'Bedroom' }).waitFor();
    const checks = page.locator('#checks');
    await checks.waitFor();
    await expect.poll(async () => Math.abs((await checks.boundingBox())?.y ?? 9999)).toBeLessThan(450);
  });

  test('keeps both strokes of a warning in one line on a phone', async () => {
    const { page } = await place.visitAs(place.person, `/rooms/${fleet.worsening.id}`, PHONE);
    const topOf = async (name: string) => (await page.getByRole('link', { name }).first().boundingBox())!.y;
    expect(await topOf('Latest stroke')).toBe(await topOf('First stroke'));
  });

  test('keeps still on a phone while its course is on its way', async () => {
    const { page } = await place.visitAs(place.person, '/sign-ins', PHONE);
    await page.addInitScript(`window.moved = 0;
      new PerformanceObserver((list) => { for (const each of list.getEntries()) window.moved += each.value; })
        .observe({ type: 'layout-shift', buffered: true });`);
    const held: (() => void)[] = [];
    await page.route('**/api/v1/measures', async (route) => {
      await new Promise<void>((go) => held.push(go));
      await route.continue();
    });
    await page.goto(`/rooms/${fleet.steady.id}`);
    await page.getByRole('heading', { name: 'Work done' }).waitFor();
    await expect.poll(() => held.length).toBe(1);
    held[0]();
    await page.getByRole('figure', { name: 'Side: rear' }).locator('canvas').waitFor();
    expect(await page.evaluate('moved')).toBeLessThan(0.1);
  });

  test('shows the course of each side with its finding in words and as a table', async () => {
    const { page } = await openRoom();
    const front = page.getByRole('figure', { name: 'Side: front' });
    await front.getByText(/Its normal is .*\sA to .*\sA\./).waitFor();
    await front.locator('canvas').waitFor();
    await front.getByText('As a table').click();
    await front
      .getByRole('rowheader', { name: /above its normal$/ })
      .first()
      .waitFor();
    await page.getByRole('radio', { name: 'Coming in' }).check();
    await page.getByLabel('Show').selectOption({ label: 'Duration' });
    await page
      .getByRole('figure', { name: 'Side: rear' })
      .getByText(/The latest is .*\ss\./)
      .waitFor();
  });

  test('lists the strokes, newest first, and more on demand', async () => {
    const { page } = await openRoom();
    const strokes = page.getByRole('region', { name: 'Strokes', exact: true });
    const links = strokes.locator('tbody a');
    await links.first().waitFor();
    expect(await links.count()).toBe(12);
    await strokes.getByRole('button', { name: 'Show more' }).click();
    await links.nth(23).waitFor();
    const times = await strokes
      .locator('tbody time')
      .evaluateAll((all) => all.map((t) => t.getAttribute('datetime')));
    expect(times).toEqual([...times].sort().reverse());
  });

  test('takes a record of work, which the list and the trend then show, with whether it helped', async () => {
    const { page } = await openRoom();
    await page.getByText('Record work').click();
    await page.getByText('Another day, one side, or notes').click();
    await page.getByLabel('When', { exact: true }).fill('2026-04-12T09:30');
    await page.getByLabel('Side', { exact: true }).selectOption({ label: 'front' });
    await page.getByLabel('Notes').fill('Two were proud.');
    await page.getByRole('button', { name: 'Fasteners seated' }).click();
    await page.getByText('Saved: Fasteners seated.').waitFor();
    const works = page.getByRole('region', { name: 'Work done' });
    const work = works.getByRole('listitem').filter({ hasText: 'Two were proud.' });
    await work.getByText(/the front side draws .* more than before/).waitFor();
    await page.getByRole('figure', { name: 'Side: front' }).getByText('work done').waitFor();
  });

  test('takes a record of work in two taps, and takes it back in a third', async () => {
    const { page } = await openRoom();
    const works = page.getByRole('region', { name: 'Work done' });
    await page.getByText('Record work').click();
    await page.getByRole('button', { name: 'Lubricated' }).click();
    const work = works.getByRole('listitem').filter({ hasText: 'Lubricated' });
    await work.getByText('It takes two strokes').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('Undone.').waitFor();
    await work.waitFor({ state: 'detached' });
  });

  test('a lost session asks to sign in again and loses nothing typed', async () => {
    const { page } = await openRoom();
    await page.getByText('Record work').click();
    await page.getByText('Another day, one side, or notes').click();
    await page.getByLabel('Notes').fill('Half a sentence');
    await page.context().clearCookies();
    await page.getByRole('button', { name: 'Cleaned' }).click();
    await page.getByText('what you typed is still there').waitFor();
    await signIn(page, place.person);
    expect(await page.getByLabel('Notes').inputValue()).toBe('Half a sentence');
  });

  test('a warning is marked as seen, with a note', async () => {
    const { page } = await openRoom();
    const open = page.getByRole('button', { name: /^I have seen this/ });
    await open.first().waitFor();
    const before = await open.count();
    await open.first().click();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await expect.poll(() => page.evaluate('document.activeElement.textContent')).toBe('I have seen this');
    await open.first().click();
    await page.getByLabel('Note (optional)').fill('On the list for Friday.');
    await page.getByRole('button', { name: 'Mark as seen' }).click();
    await page.getByText('On the list for Friday.').waitFor();
    expect(await open.count()).toBe(before - 1);
  });

  test('shows all of its course’s table on a phone, each stroke with how it stands to the normal', async () => {
    const { page } = await place.visitAs(place.person, `/rooms/${fleet.worsening.id}`, NARROW);
    const front = page.getByRole('figure', { name: 'Side: front' });
    await front.getByText('As a table').click();
    const table = front.getByRole('region', { name: 'Table: Side: front' });
    await table
      .getByRole('rowheader', { name: /inside its normal$/ })
      .first()
      .waitFor();
    await table
      .getByRole('rowheader', { name: /above its normal$/ })
      .first()
      .waitFor();
    expect(await table.evaluate((part) => part.scrollWidth - part.clientWidth)).toBe(0);
    // Day, time and finding: three lines.
    const row = await table.getByRole('rowheader').first().boundingBox();
    expect(row!.height).toBeLessThan(90);
  });

  test('says what a value means that was never measured so', async () => {
    const { page } = await openRoom();
    const values = page.getByRole('group', { name: 'Values' });
    const means = values.getByText('As if battery and weather were always the same');
    await means.waitFor();
    await values.getByLabel('as measured').check();
    await means.waitFor({ state: 'detached' });
  });

  test('is not talked down on its coach’s page by what its latest stroke drew', async () => {
    const { page } = await place.visitAs(place.person, `/coaches/${fleet.coach.id}`);
    const courses = page.getByRole('region', { name: 'Over the last strokes' });
    const course = (room: string) => courses.getByRole('region', { name: room });
    await course('Bedroom')
      .getByText(/Its warning stays open: it takes more than one good stroke to clear it\.$/)
      .waitFor();
    await course('Dinette')
      .getByText(/That is usual for it\.$/)
      .waitFor();
    expect(await course('Dinette').getByText('Its warning stays open').count()).toBe(0);
  });

  test('leads to a stroke and back', async () => {
    const { page } = await openRoom();
    await page.getByRole('link', { name: 'Latest stroke' }).first().click();
    await page.getByRole('heading', { level: 1, name: /^Stroke / }).waitFor();
    await page.getByRole('link', { name: 'Bedroom' }).click();
    await page.getByRole('heading', { level: 1, name: 'Bedroom' }).waitFor();
    expect(new URL(page.url()).pathname).toBe(`/rooms/${fleet.worsening.id}`);
  });

  test('keeps the course that was chosen while a stroke is looked at, and when loaded anew', async () => {
    const { page } = await openRoom();
    const course = page.getByRole('region', { name: 'Over time' });
    await course.getByLabel('Show').selectOption('Duration');
    await course.getByLabel('Coming in').check();
    await course.getByLabel('as measured').check();
    await page.waitForURL('**?measure=durationS&direction=retract&values=measured');
    const isAsChosen = async () => {
      await expect.poll(() => course.getByLabel('Show').inputValue()).toBe('durationS');
      expect(await course.getByLabel('Coming in').isChecked()).toBe(true);
      expect(await course.getByLabel('as measured').isChecked()).toBe(true);
    };
    await page.getByRole('link', { name: 'Latest stroke' }).first().click();
    await page.getByRole('heading', { level: 1, name: /^Stroke / }).waitFor();
    await page.goBack();
    await isAsChosen();
    await page.reload();
    await isAsChosen();
    await course.getByLabel('Show').selectOption('Running current (median)');
    await page.waitForURL('**?direction=retract&values=measured');
  });

  test('prints the work that was done under its heading, and no sheet without what it does not promise', async () => {
    const { page } = await openRoom();
    await page.getByText('No work recorded yet.').or(page.locator('.work-line').first()).waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.getByText('not a promise').waitFor();
    const breaks = `getComputedStyle(document.querySelector('.services')).breakInside`;
    expect(await page.evaluate(breaks)).toBe('avoid');
  });
});
