import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { violationsOn } from './support/accessibility.ts';
import { type Api, apiOf, ask } from './support/api.ts';
import { NARROW } from './support/devices.ts';
import { addCoach, addRoom } from './support/fleet.ts';
import { addOwner } from './support/owner.ts';
import { describePages } from './support/place.ts';
import type { Person } from './support/visitor.ts';

interface Work {
  readonly kind: string;
  readonly at: string;
  readonly side: string | null;
  readonly notes: string | null;
}

describePages('work done on a room', (place) => {
  let api: Api;
  let owner: Person;
  let room: { id: string };

  beforeAll(async () => {
    api = await place.api();
    owner = await addOwner(place);
    room = await addRoom(api, await addCoach(api, 'Juniper 31'), 'Bedroom');
  });

  const worksOf = async (): Promise<Work[]> =>
    (await ask<{ items: Work[] }>(api, 'GET', `/rooms/${room.id}/services`)).items;
  const workDone = (page: Page) => page.getByRole('region', { name: 'Work done' });

  test('is one tap from the answer, right behind the warnings', async () => {
    const { page } = await place.visitAs(place.person, `/rooms/${room.id}`, NARROW);
    const way = page.getByRole('link', { name: 'Work done, and whether it helped' });
    expect((await way.boundingBox())!.y).toBeLessThan(NARROW.viewport.height);
    await way.click();
    await expect
      .poll(async () => (await workDone(page).getByRole('heading').boundingBox())!.y)
      .toBeLessThan(NARROW.viewport.height / 2);
    const sections = await page.getByRole('heading', { level: 2 }).allInnerTexts();
    expect(sections.slice(0, 4)).toEqual(['Open warnings', 'Work done', 'Over time', 'Strokes']);
  });

  test('that could not be sent is still there, and says what to do', async () => {
    const { page } = await place.visitAs(place.person, `/rooms/${room.id}`, NARROW);
    const section = workDone(page);
    await section.getByText('Record work').click();
    await page.route(/\/services$/, (route) => route.abort());
    await section.getByRole('button', { name: 'Lubricated' }).click();
    await section
      .getByText('What you entered is still here. Send it again once there is a network.')
      .waitFor();
    await page.unroute(/\/services$/);
    await section.getByRole('button', { name: 'Lubricated' }).click();
    await section.getByText('Saved: Lubricated.').waitFor();
    await section.getByRole('button', { name: 'Undo' }).click();
    await section.getByText('Undone.').waitFor();
  });

  test('of a day to come is refused in plain words before it is sent, where it is entered', async () => {
    const { page, troubles } = await place.visitAs(place.person, `/rooms/${room.id}`, NARROW);
    const section = workDone(page);
    await section.getByText('Record work').click();
    await section.getByText('Another day, one side, or notes').click();
    await section.getByLabel('When').fill('2126-01-01T10:00');
    await section.getByText('Another day, one side, or notes').click();
    await section.getByRole('button', { name: 'Gear replaced' }).click();
    await section.getByText('This moment has not come yet.').waitFor();
    expect(await page.evaluate('document.activeElement.type')).toBe('datetime-local');

    expect(await worksOf()).toEqual([]);
    expect(await violationsOn(page)).toEqual([]);
    await section.getByLabel('When').fill('1850-01-01T10:00');
    await section.getByRole('button', { name: 'Gear replaced' }).click();
    await section.getByText('That is before the year 2000.').waitFor();
    expect(await worksOf()).toEqual([]);
    await section.getByLabel('When').fill('2026-05-04T10:00');
    await section.getByRole('button', { name: 'Gear replaced' }).click();
    await section.getByText('Saved: Gear replaced.').waitFor();
    expect((await worksOf()).map(({ at }) => at)).toEqual(['2026-05-04T08:00:00.000Z']);
    expect(troubles).toEqual([]);
  });

  test('is changed and removed long after; an owner only its own', async () => {
    await ask(api, 'POST', `/rooms/${room.id}/services`, { kind: 'cleaned', at: '2026-05-02T10:00:30Z' });
    const own = { kind: 'adjusted', at: '2026-05-01T10:00:30Z' };
    await ask(await apiOf(api.url, owner.email, owner.password), 'POST', `/rooms/${room.id}/services`, own);
    const { page, troubles } = await place.visitAs(owner, `/rooms/${room.id}`, NARROW);
    const section = workDone(page);
    const change = page.getByRole('button', { name: 'Change: Adjusted, 1 May 2026' });
    await change.waitFor();
    expect(await section.getByRole('button', { name: /^(Change|Remove): Cleaned/ }).count()).toBe(0);
    await change.click();
    const line = section.getByRole('listitem').filter({ has: change });
    await line.getByLabel('What was done').selectOption('Lubricated');
    await line.getByLabel('Side').selectOption('front');
    await line.getByLabel('Notes').fill('Rear rack was dry.');
    expect(await violationsOn(page)).toEqual([]);
    await line.getByRole('button', { name: 'Save' }).click();
    await section.getByText('Rear rack was dry.').waitFor();
    const changed = {
      kind: 'lubricated',
      side: 'front',
      notes: 'Rear rack was dry.',
      at: '2026-05-01T10:00:30.000Z',
    };
    expect(await worksOf()).toContainEqual(expect.objectContaining(changed));

    const remove = section.getByRole('button', { name: 'Remove: Lubricated, 1 May 2026' });
    await remove.click();
    await section.getByRole('button', { name: 'Keep it' }).click();
    await remove.click();
    expect(await violationsOn(page)).toEqual([]);
    await section.getByRole('button', { name: 'Yes, remove it' }).click();
    await remove.waitFor({ state: 'detached' });
    expect((await worksOf()).map(({ kind }) => kind)).not.toContain('lubricated');

    const dealer = await place.visitAs(place.person, `/rooms/${room.id}`);
    await workDone(dealer.page).getByRole('button', { name: 'Remove: Cleaned, 2 May 2026' }).waitFor();
    expect([...troubles, ...dealer.troubles]).toEqual([]);
  });

  test('is recorded, taken back, kept and removed by keyboard, which never loses its place', async () => {
    const { page, troubles } = await place.visitAs(place.person, `/rooms/${room.id}`);
    const section = workDone(page);
    const press = async (name: string | RegExp, key = 'Enter') => {
      await section.getByRole('button', { name }).first().focus();
      await page.keyboard.press(key);
    };
    const focused = () => page.evaluate<string>('document.activeElement.textContent');
    await section.getByText('Record work').focus();
    await page.keyboard.press('Enter');
    await press('Adjusted');
    await section.getByText('Saved: Adjusted.').waitFor();
    expect(await focused()).toBe('Record work');
    await press('Undo');
    await section.getByText('Undone.').waitFor();
    expect(await focused()).toBe('Undone.');

    await ask(api, 'POST', `/rooms/${room.id}/services`, { kind: 'retimed', at: '2026-05-01T10:00:00Z' });
    await page.reload();
    await press(/^Remove: Sides retimed/);
    await press('Keep it');
    expect(await focused()).toBe('Remove');
    await page.keyboard.press('Enter');
    await press('Yes, remove it');
    const line = section.getByRole('button', { name: /^Remove: Sides retimed/ });
    await line.waitFor({ state: 'detached' });
    expect(
      await page.evaluate('document.activeElement.closest("section").ariaLabelledByElements[0].id'),
    ).toBe('services');
    expect(troubles).toEqual([]);
  });

  test('that somebody else records is shown without asking for it', async () => {
    const { page } = await place.visitAs(place.person, '/');
    const watched = page.waitForEvent('websocket').then((socket) => socket.waitForEvent('framereceived'));
    await page.goto(`/rooms/${room.id}`);
    await watched;
    await workDone(page).getByText('Record work').waitFor();
    await ask(api, 'POST', `/rooms/${room.id}/services`, {
      kind: 'motor-replaced',
      at: '2026-05-05T10:00:00Z',
    });
    await workDone(page).getByText('Motor replaced', { exact: true }).waitFor();
  });

  test('with a long note is shown by its beginning, and whole for whoever asks', async () => {
    const notes = `Began with ${'a very long story, '.repeat(400)}and ended well.`;
    await ask(api, 'POST', `/rooms/${room.id}/services`, {
      kind: 'other',
      at: '2026-05-03T10:00:00Z',
      notes,
    });
    const { page } = await place.visitAs(place.person, `/rooms/${room.id}`, NARROW);
    const note = workDone(page).getByText(/^Began with/);
    await note.waitFor();
    expect((await note.textContent())?.length).toBeLessThan(300);
    await workDone(page).getByRole('button', { name: 'Show all of it' }).click();
    expect(await note.textContent()).toBe(notes);
  });
});
