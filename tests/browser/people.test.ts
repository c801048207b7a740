import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { violationsOn } from './support/accessibility.ts';
import { type Api, ask } from './support/api.ts';
import { NARROW } from './support/devices.ts';
import { describePages } from './support/place.ts';
import { signIn } from './support/visitor.ts';

const PASSWORD = 'twelve or more of them';

/** The link that a page shows once. */
const shownLink = async (page: Page, label: string): Promise<string> => {
  const link = page.getByRole('textbox', { name: label });
  await link.waitFor();
  return link.inputValue();
};

async function addCoach(api: Api, name: string): Promise<string> {
  return (await ask<{ id: string }>(api, 'POST', '/coaches', { name })).id;
}

describePages('people', (place) => {
  test('a dealer invites a colleague, who joins by the link and sees the coaches', async () => {
    await addCoach(await place.api(), 'Heron 12');
    const dealer = await place.visit('/people');
    await signIn(dealer.page, place.person);
    await dealer.page.getByText('Invite a person').click();
    await dealer.page.getByRole('button', { name: 'Invite', exact: true }).click();
    await dealer.page.getByText('Enter an e-mail address.').waitFor();
    await dealer.page.getByLabel('E-mail').fill('ines@example.com');
    await dealer.page.getByLabel('Name').fill('Ines');
    await dealer.page.getByRole('button', { name: 'Invite', exact: true }).click();
    const link = await shownLink(dealer.page, 'Link for joining');
    const box = dealer.page.getByRole('textbox', { name: 'Link for joining' });
    expect(await box.evaluate((field) => field.scrollHeight - field.clientHeight)).toBeLessThanOrEqual(0);
    await dealer.page.getByText('has not joined yet').waitFor();
    expect(await violationsOn(dealer.page)).toEqual([]);

    const ines = await place.visit('/join', NARROW);
    await ines.page.getByText('This link is not complete.').waitFor();
    // The whole link, pasted into the same tab.
    await ines.page.goto(new URL(link).pathname + new URL(link).hash);
    await ines.page.getByLabel('Password').fill('short');
    await ines.page.getByRole('button', { name: 'Join' }).click();
    await ines.page.getByText('The password needs at least 12 characters.').waitFor();
    expect(await violationsOn(ines.page)).toEqual([]);
    await ines.page.getByLabel('Password').fill(PASSWORD);
    await ines.page.getByRole('button', { name: 'Join' }).click();
    await ines.page.getByText('Heron 12').first().waitFor();
    // The link is used up: that is said before anybody chooses a password.
    const late = await place.visit(new URL(link).pathname + new URL(link).hash, NARROW);
    await late.page.getByText('This link was used already, or its time is over.').waitFor();
    expect(await late.page.getByLabel('Password').count()).toBe(0);
    // A technician has no people to see.
    expect(await ines.page.getByRole('link', { name: 'People' }).count()).toBe(0);
    expect([...dealer.troubles, ...ines.troubles]).toEqual([]);

    await dealer.page.reload();
    await dealer.page.getByText('Change Ines').click();
    await dealer.page.getByRole('button', { name: 'Sign out everywhere' }).click();
    await dealer.page.getByText('Ines is signed out on every device.').waitFor();
    expect(await violationsOn(dealer.page)).toEqual([]);
    await ines.page.reload();
    await signIn(ines.page, { email: 'ines@example.com', password: PASSWORD });
    await ines.page.getByText('Heron 12').first().waitFor();
    await dealer.page.getByLabel('To delete, type the name: Ines').fill('Ines');
    await dealer.page.getByRole('button', { name: 'Delete', exact: true }).click();
    await dealer.page.getByText('ines@example.com').waitFor({ state: 'detached' });
    await ines.page.reload();
    await ines.page.getByRole('button', { name: 'Sign in' }).waitFor();
  });

  test('a dealer lets an owner of no account see one coach until a day, and ends it', async () => {
    const api = await place.api();
    const coachId = await addCoach(api, 'Wren 7');
    await addCoach(api, 'Not for her');
    const dealer = await place.visit(`/coaches/${coachId}`);
    await signIn(dealer.page, place.person);
    await dealer.page.getByText('Nobody else sees it.').waitFor();
    await dealer.page.getByText('Let somebody see it').click();
    await dealer.page.getByLabel('E-mail').fill('olga@example.com');
    const day = new Date(Date.now() + 3 * 86_400_000).toISOString().slice(0, 10);
    await dealer.page.getByLabel('Until').fill(day);
    await dealer.page.getByRole('button', { name: 'Let them see it' }).click();
    const link = await shownLink(dealer.page, 'Link for joining');
    expect(await violationsOn(dealer.page)).toEqual([]);

    const olga = await place.visit(new URL(link).pathname + new URL(link).hash, NARROW);
    await olga.page.getByLabel('Password').fill(PASSWORD);
    await olga.page.getByRole('button', { name: 'Join' }).click();
    await olga.page.getByRole('heading', { name: 'Wren 7' }).waitFor();
    expect(await olga.page.getByText('Not for her').count()).toBe(0);

    await dealer.page.reload();
    await dealer.page.getByRole('button', { name: /^End it for/ }).click();
    await dealer.page.getByText('Nobody else sees it.').waitFor();
    await olga.page.goto(`/coaches/${coachId}`);
    await olga.page.getByText('There is nothing here that you may see.').waitFor();
  });

  test('each person’s address stands below the name, whether it would fit beside it or not', async () => {
    const api = await place.api();
    for (const name of ['Io', 'Wilhelmina Featherstonehaugh-Cholmondeley'])
      await ask(api, 'POST', '/people', { email: `${name.slice(0, 2)}@example.com`, name, role: 'owner' });
    const { page } = await place.visitAs(place.person, '/people');
    await page.getByText('Wilhelmina', { exact: false }).first().waitFor();
    const heights = await page.evaluate<number[]>(`[...document.querySelectorAll('.works > li')].map((line) =>
      Math.round(line.querySelector('.about').getBoundingClientRect().top
        - line.querySelector('strong').getBoundingClientRect().bottom))`);
    expect(heights.length).toBeGreaterThan(2);
    expect(
      heights.every((gap) => gap >= 0 && gap < 12),
      heights.join(),
    ).toBe(true);
  });

  test('one makes a token that is shown once, changes the password, and signs out elsewhere', async () => {
    const elsewhere = await place.visit('/');
    await signIn(elsewhere.page, place.person);
    const here = await place.visit('/sign-ins');
    await signIn(here.page, place.person);
    await here.page.getByText('Make a token').first().click();
    await here.page.getByLabel('What it is for').fill('Nightly list');
    await here.page
      .getByLabel('Until')
      .fill(new Date(Date.now() + 9 * 86_400_000).toISOString().slice(0, 10));
    await here.page.getByRole('button', { name: 'Make a token' }).click();
    const token = await shownLink(here.page, 'The token');
    const answer = await here.page.request.get('/api/v1/coaches', {
      headers: { authorization: `Bearer ${token}` },
    });
    expect(answer.status()).toBe(200);
    expect(await violationsOn(here.page)).toEqual([]);

    await here.page.getByText('Change the password').click();
    await here.page.getByLabel('Current password').fill('not this one');
    await here.page.getByLabel('New password').fill(PASSWORD);
    await here.page.getByRole('button', { name: 'Change it' }).click();
    await here.page.getByText('This is not your current password.').waitFor();
    const present = here.page.getByLabel('Current password');
    const next = here.page.getByLabel('New password');
    await present.fill(place.person.password);
    await next.fill(place.person.password);
    await here.page.getByRole('button', { name: 'Change it' }).click();
    await here.page.getByText('This is your current password. Choose another one.').waitFor();
    // What the service said of the attempt before is no longer there beside it.
    expect(await here.page.getByText('This is not your current password.').count()).toBe(0);
    await next.fill(PASSWORD);
    await here.page.getByLabel('Show what is typed').check();
    expect(await next.getAttribute('type')).toBe('text');
    expect(await violationsOn(here.page)).toEqual([]);
    const there = here.page.getByRole('button', { name: 'Sign out there' });
    await there.first().waitFor();
    await here.page.getByRole('button', { name: 'Change it' }).click();
    await here.page.getByText('The password is changed.').waitFor();
    await there.first().waitFor({ state: 'detached' });
    await elsewhere.page.reload();
    await elsewhere.page.getByRole('button', { name: 'Sign in' }).waitFor();
    expect(here.troubles).toEqual([]);
  });

  test('whoever forgot the password is told the same, known or not', async () => {
    const { page } = await place.visit('/');
    await page.getByRole('link', { name: 'Forgot your password?' }).click();
    for (const email of [place.person.email, 'nobody@example.com']) {
      await page.getByLabel('E-mail').fill(email);
      await page.getByRole('button', { name: 'Ask for the link' }).click();
      await page.getByText('There is no mail server here, so nothing is mailed.').waitFor();
    }
    expect(await violationsOn(page)).toEqual([]);
  });
});
