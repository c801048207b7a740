import { beforeAll, expect, test } from 'vitest';
import { violationsOn } from './support/accessibility.ts';
import { type Api, ask } from './support/api.ts';
import { PHONE } from './support/devices.ts';
import { addFleet, type Fleet } from './support/fleet.ts';
import { addOwner } from './support/owner.ts';
import { describePages } from './support/place.ts';
import type { Person } from './support/visitor.ts';

describePages('all open warnings of a coach', (place) => {
  let api: Api;
  let fleet: Fleet;
  let owner: Person;
  beforeAll(async () => {
    api = await place.api();
    fleet = await addFleet(api);
    owner = await addOwner(place);
  });

  test('are read as they are now: one that somebody else has seen meanwhile is not among them', async () => {
    const { page } = await place.visitAs(place.person, '/');
    const watched = page.waitForEvent('websocket').then((socket) => socket.waitForEvent('framereceived'));
    await page.goto(`/coaches/${fleet.coach.id}`);
    await watched;
    await page.getByText(/^Mark all \d+ open warnings as seen$/).click();
    const submit = page.getByRole('button', { name: /^I have seen all/ });
    await submit.waitFor();
    const listed = page.locator('.inline-form .works > li');
    const before = await listed.count();
    const { items } = await ask<{ items: { id: string }[] }>(
      api,
      'GET',
      `/rooms/${fleet.worsening.id}/warnings?state=open`,
    );
    await ask(api, 'POST', `/warnings/${items[0].id}/acknowledgement`, {});
    await expect.poll(() => listed.count()).toBe(before - 1);
  });

  test('are marked as seen in one go by its owner, who reads their cautions first', async () => {
    const { page, troubles } = await place.visitAs(owner, `/coaches/${fleet.coach.id}`, PHONE);
    await page.getByText(/^Mark (the|all \d+) open warnings? as seen$/).click();
    const caution = page.getByText(/everyone out of the travel|out of its travel/i).first();
    await caution.waitFor();
    await page.getByRole('link', { name: 'Bedroom' }).last().waitFor();
    expect(await violationsOn(page)).toEqual([]);
    await page.getByLabel('Note for all of them (optional)').fill('On the list for Tuesday.');
    await page.getByRole('button', { name: /^I have seen/ }).click();
    await page.getByText(/^\d+ warnings? marked as seen\.$/).waitFor();
    await page.getByText(/open warnings? as seen$/).waitFor({ state: 'detached' });

    await page.goto(`/rooms/${fleet.worsening.id}`);
    await page.getByRole('heading', { name: 'Seen and still there' }).waitFor();
    await page.getByText('On the list for Tuesday.').first().waitFor();
    // What not to do is told as before.
    await caution.waitFor();
    expect(troubles).toEqual([]);
  });
});
