import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { violationsOn } from './support/accessibility.ts';
import { type Api, apiOf, ask } from './support/api.ts';
import { addCoach, addRoom } from './support/fleet.ts';
import { addOwner } from './support/owner.ts';
import { describePages } from './support/place.ts';
import type { Person } from './support/visitor.ts';

const PHONE = { viewport: { width: 390, height: 844 } };

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
  }, 60_000);

  const worksOf = async (): Promise<Work[]> =>
    (await ask<{ items: Work[] }>(api, 'GET', `/rooms/${room.id}/services`)).items;
  const workDone = (page: Page) => page.getByRole('region', { name: 'Work done' });

  test('of a day to come is refused in plain words before it is sent, where it is entered', async () => {
    const { page, troubles } = await place.visitAs(place.person, `/rooms/${room.id}`, PHONE);
    const section = workDone(page);
    await section.getByText('Record work').click();
    await section.getByText('Another day, one side, or notes').click();
    await section.getByLabel('When').fill('2031-01-01T10:00');
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
    const { page, troubles } = await place.visitAs(owner, `/rooms/${room.id}`, PHONE);
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

  test('with a long note is shown by its beginning, and whole for whoever asks', async () => {
    const notes = `Began with ${'a very long story, '.repeat(400)}and ended well.`;
    await ask(api, 'POST', `/rooms/${room.id}/services`, {
      kind: 'other',
      at: '2026-05-03T10:00:00Z',
      notes,
    });
    const { page } = await place.visitAs(place.person, `/rooms/${room.id}`, PHONE);
    const note = workDone(page).getByText(/^Began with/);
    await note.waitFor();
    expect((await note.textContent())?.length).toBeLessThan(300);
    await workDone(page).getByRole('button', { name: 'Show all of it' }).click();
    expect(await note.textContent()).toBe(notes);
  });
});
