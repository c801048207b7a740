import { beforeAll, expect, test } from 'vitest';
import { violationsOn } from './support/accessibility.ts';
import { addFleet, type Fleet } from './support/fleet.ts';
import { addOwner } from './support/owner.ts';
import { describePages } from './support/place.ts';
import type { Person } from './support/visitor.ts';

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

describePages('all open warnings of a coach', (place) => {
  let fleet: Fleet;
  let owner: Person;
  beforeAll(async () => {
    fleet = await addFleet(await place.api());
    owner = await addOwner(place);
  });

  test('are marked as seen in one go by its owner, who reads their cautions first', async () => {
    const { page, troubles } = await place.visitAs(owner, `/coaches/${fleet.coach.id}`, PHONE);
    await page.getByText(/^Mark (the|all \d+) open warnings? as seen$/).click();
    const caution = page.getByText(/everyone out of the travel|out of its travel/i).first();
    await caution.waitFor();
    await page.getByRole('link', { name: 'Bedroom' }).last().waitFor();
    expect(await violationsOn(page)).toEqual([]);
    await page.getByLabel('Note for all of them (if you like)').fill('On the list for Tuesday.');
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
