import { readFile } from 'node:fs/promises';
import { parse } from 'csv-parse/sync';
import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { type Api, ask } from './support/api.ts';
import { addFleet, type Fleet } from './support/fleet.ts';
import { addOwner } from './support/owner.ts';
import { describePages } from './support/place.ts';
import { signIn, standsStill } from './support/visitor.ts';

interface Sent {
  readonly results: readonly { readonly outcome: string; readonly strokeId: string }[];
}
interface Analysed {
  readonly analysis: { readonly status: string };
}

describePages('the dealer', (place) => {
  let api: Api;
  let fleet: Fleet;
  beforeAll(async () => {
    api = await place.api();
    fleet = await addFleet(api);
    await ask(api, 'POST', '/coaches', { name: '=Plain 12', model: 'Brackenfold 36' });
  });

  const coaches = (page: Page) => page.getByRole('list', { name: 'List of coaches' }).locator('> li');

  async function openLot(): Promise<{ page: Page; troubles: string[] }> {
    const visitor = await place.visitAs(place.person, '/');
    await coaches(visitor.page).first().waitFor();
    return visitor;
  }

  test('counts the rooms that need work by the word that they bear', async () => {
    const { page } = await openLot();
    await standsStill(page);
    const lines = page.locator('.room-line');
    const needing = await lines.filter({ hasText: /Needs work|Stop/ }).count();
    expect(await lines.count()).toBeGreaterThan(needing);
    const counted = ['no room needs work', '1 room needs work'][needing] ?? `${needing} rooms need work`;
    await page.getByText(`3 coaches, ${counted}.`).waitFor();
    await page
      .getByText(/logger heard .* ago/)
      .first()
      .waitFor();
  });

  test('sees the first coach in the upper half of a desk, below one row of search and filters', async () => {
    const { page } = await openLot();
    const topOf = async (label: string) => (await page.getByLabel(label, { exact: true }).boundingBox())!.y;
    const search = await topOf('Search coach, model or room');
    for (const label of ['Verdict', 'Model', 'Room', 'Order']) expect(await topOf(label)).toBe(search);
    expect((await coaches(page).first().boundingBox())!.y).toBeLessThan(400);
  });

  test('finds coaches by search and filters, which a link keeps', async () => {
    const { page, troubles } = await openLot();
    expect(await coaches(page).count()).toBe(3);
    await page.getByLabel('Search coach, model or room').fill('bracken');
    await page.getByText('1 coach shown.').waitFor();
    await page.waitForURL('**/?q=bracken');
    await page.getByRole('button', { name: 'Show all' }).click();
    await page.getByText('3 coaches shown.').waitFor();
    await page.getByLabel('Room', { exact: true }).selectOption('Dinette');
    await page.getByText('1 coach shown.').waitFor();
    await page.reload();
    await page.getByText('1 coach shown.').waitFor();
    await standsStill(page);
    expect(await page.getByLabel('Room', { exact: true }).inputValue()).toBe('Dinette');
    await page.getByLabel('Verdict').selectOption('stop');
    await page.getByRole('heading', { name: 'No coach matches' }).waitFor();
    expect(troubles).toEqual([]);
  });

  test('prints the list with what was asked for, in words, and with nothing to press', async () => {
    const { page } = await place.visitAs(place.person, '/?q=juniper&room=Dinette&sort=name');
    await coaches(page).first().waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.evaluate(`window.dispatchEvent(new Event('beforeprint'))`);
    await page.getByText('Search: “juniper” · Room: Dinette · By name').waitFor();
    await page.getByText(/^Printed \d+ \w+ \d{4}, \d\d:\d\d$/).waitFor();
    await page.locator('.room-name', { hasText: 'Bedroom' }).waitFor();
    const [name, about] = await Promise.all(
      ['h2', '.about'].map((part) => coaches(page).first().locator(part).first().boundingBox()),
    );
    expect(about!.y).toBeGreaterThanOrEqual(name!.y + name!.height - 1);
    for (const pressed of ['button', 'input', 'select', 'summary', 'label', '.button'])
      expect(await page.locator(pressed).filter({ visible: true }).count(), pressed).toBe(0);
    await page.getByText('not a promise').waitFor();
  });

  test('prints on what a browser prints when it was printed', async () => {
    const { page } = await openLot();
    await page.pdf({ format: 'A4' });
    await page.emulateMedia({ media: 'print' });
    await page.getByText(/^Printed /).waitFor();
  });

  test('is not interrupted while typing by what was found so far', async () => {
    const { page } = await openLot();
    const search = page.getByLabel('Search coach, model or room');
    await search.pressSequentially('juniper ');
    await page.waitForURL('**/?q=juniper');
    await page.getByText('1 coach shown.').waitFor();
    await search.pressSequentially('31');
    await page.waitForURL('**/?q=juniper+31');
    expect(await search.inputValue()).toBe('juniper 31');
    await page.goBack();
    await page.goForward();
    expect(await search.inputValue()).toBe('juniper 31');
  });

  test('leaves to an owner of few the answers alone, without what is for hundreds', async () => {
    const owner = await addOwner(place);
    const { page, troubles } = await place.visitAs(owner, '/');
    await coaches(page).nth(2).waitFor();
    expect(await page.getByRole('checkbox').count()).toBe(0);
    expect(await page.getByLabel('Search coach, model or room').count()).toBe(0);
    await page.goto('/?q=bracken');
    await page.getByText('1 coach shown.').waitFor();
    expect(await page.getByLabel('Search coach, model or room').inputValue()).toBe('bracken');
    expect(troubles).toEqual([]);
  });

  test('is told what changed since the last visit, and sees only that if wanted', async () => {
    const { service } = place;
    await service().pool.query(
      "update people set looked_at = now() - interval '1 day', looked_before_at = null",
    );
    const { page } = await openLot();
    await page.getByText(/^Since .*:/).waitFor();
    await page.getByText(/1 worse, .*3 new\./).waitFor();
    await coaches(page)
      .filter({ hasText: 'Bedroom' })
      .getByText(/was (Clear|Learning)/)
      .first()
      .waitFor();
    await page.getByLabel('Changed since then only').check();
    await page.getByText('1 coach shown.').waitFor();
  });

  test('marks the warnings of chosen coaches as seen with one note', async () => {
    const { page } = await openLot();
    await page.getByLabel('Select Juniper 31').check();
    await page.getByText('1 coach selected').waitFor();
    await page.getByLabel('Note for all of them (optional)').fill('Booked for Friday.');
    await page.getByRole('button', { name: 'Mark their warnings as seen' }).click();
    await page.getByText(/\d warnings? marked as seen\./).waitFor();
    const { items } = await ask<{ items: { acknowledgement: { note: string } | null }[] }>(
      api,
      'GET',
      `/rooms/${fleet.worsening.id}/warnings?state=acknowledged`,
    );
    expect(items.map((warning) => warning.acknowledgement?.note)).toContain('Booked for Friday.');
  });

  test('saves what is shown as CSV, in which nothing is a formula', async () => {
    const { page, troubles } = await openLot();
    await page.getByLabel('Search coach, model or room').fill('plain');
    await page.getByText('1 coach shown.').waitFor();
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save the whole list as CSV' }).click();
    const saved = await coming;
    expect(saved.suggestedFilename()).toBe('coaches.csv');
    const rows = parse(await readFile(await saved.path()), { columns: true, bom: true });
    expect(rows).toEqual([expect.objectContaining({ coach: "'=Plain 12", model: 'Brackenfold 36' })]);
    expect(troubles).toEqual([]);
  });

  test('adds a coach, a room and a logger, whose token works, deletes them and brings them back', async () => {
    const { page, troubles } = await openLot();
    await page.getByRole('link', { name: 'Add a coach' }).click();
    await page.getByRole('button', { name: 'Add a coach' }).click();
    await page.getByText('Enter a name.').waitFor();
    await page.getByLabel('Name or stock number').fill('Stock 9');
    await page.getByLabel('Year').fill('2021');
    await page.getByRole('button', { name: 'Add a coach' }).click();
    await page.getByRole('heading', { level: 1, name: 'Stock 9' }).waitFor();

    await page.getByText('Add a room', { exact: true }).first().click();
    await page.getByLabel('Name of the room').fill('Den');
    await page.getByLabel('What moves it').selectOption('through-frame');
    expect(await page.getByLabel('Driven sides').inputValue()).toBe('main');
    await page.getByLabel('Travel, centimetres').fill('96,5');
    await page.getByRole('button', { name: 'Add a room' }).click();
    await page.getByRole('link', { name: 'Den' }).waitFor();

    await page.getByText('Add a logger', { exact: true }).first().click();
    await page.getByLabel('Name of the logger').fill('Step well');
    // Asked in the moment in which the token is drawn: a key that is pressed then must not go elsewhere.
    await page.evaluate(`new MutationObserver((_, watch) => {
      if (document.querySelector('[aria-labelledby="new-token"]') === null) return;
      watch.disconnect();
      window.focusedAtOnce = document.activeElement.textContent;
    }).observe(document.body, { childList: true, subtree: true })`);
    await page.getByRole('button', { name: 'Add a logger' }).click();
    const token = await page.getByLabel('Token', { exact: true }).inputValue();
    expect(await page.evaluate('focusedAtOnce')).toMatch(/^The token of Step well/);
    const focused = () => page.evaluate<string>('document.activeElement.textContent');
    const curl = await page.getByLabel('Try it from a terminal').inputValue();
    const roomId = /"roomId": "([^"]+)"/.exec(curl)?.[1] ?? '';
    expect(curl).toContain(token);
    const room = await ask<{ travelMetres: number }>(api, 'GET', `/rooms/${roomId}`);
    expect(room.travelMetres).toBe(0.965);
    // What the shell would send.
    const sent = JSON.parse(/ -d '([^']+)'$/.exec(curl)?.[1] ?? '');
    expect(Math.abs(Date.now() - Date.parse(sent.startedAt))).toBeLessThan(3_600_000);
    const { results } = await ask<Sent>({ ...api, token }, 'POST', '/strokes', sent);
    expect(results[0].outcome).toBe('stored');
    const analysed = () => ask<Analysed>(api, 'GET', `/strokes/${results[0].strokeId}`);
    await expect.poll(async () => (await analysed()).analysis.status).toBe('done');
    await page.getByRole('button', { name: 'I have copied it' }).click();
    expect(await page.getByText(token).count()).toBe(0);
    expect(await focused()).toBe('Add a logger');

    await page.getByText('Delete this coach').click();
    await page.getByLabel('To delete, type the name: Stock 9').fill('Stock');
    await page.getByRole('button', { name: 'Delete', exact: true }).click();
    await page.getByText('The name is not the same.').waitFor();
    expect(await page.evaluate('document.activeElement.value')).toBe('Stock');
    await page.getByLabel('To delete, type the name: Stock 9').fill('Stock 9');
    await page.getByRole('button', { name: 'Delete', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'Coaches' }).waitFor();
    await coaches(page).first().waitFor();
    expect(await page.getByText('Stock 9').count()).toBe(0);

    await page.getByText('Deleted coaches').click();
    await page.getByRole('button', { name: 'Bring Stock 9 back' }).click();
    await coaches(page).filter({ hasText: 'Stock 9' }).getByRole('link', { name: /^Den/ }).waitFor();
    expect(troubles).toEqual([]);
  });

  test('loses nothing typed into a form when the session ends', async () => {
    const { page } = await openLot();
    await page.goto(`/rooms/${fleet.steady.id}`);
    await page.getByText('Change this room').click();
    await page.getByLabel('Name of the room').fill('Dinette, port');
    await page.context().clearCookies();
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByText('what you typed is still there').waitFor();
    await signIn(page, place.person);
    expect(await page.getByLabel('Name of the room').inputValue()).toBe('Dinette, port');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'Dinette, port' }).waitFor();
  });

  test('sets units, zone and language, which every page and the next visit write in', async () => {
    const { page } = await openLot();
    await page.getByRole('link', { name: 'Settings' }).click();
    await page.getByLabel('Units').selectOption('us');
    await page.getByText('Saved.').waitFor();
    await page.getByText(/68\s°F · 37% \(14\sin\)/).waitFor();
    await page.getByLabel('Numbers and dates as in').selectOption('de-DE');
    await page.getByText(/1\.235|1\.234/).waitFor();
    await page.getByLabel('Time zone').fill('Mars/Olympus');
    await page.getByLabel('Time zone').press('Enter');
    await page.getByLabel('Time zone').blur();
    await page.getByText('There is no such time zone.').first().waitFor();
    expect(await page.getByText('Saved.').count()).toBe(0);
    const next = await place.visit('/');
    await signIn(next.page, place.person);
    await next.page.goto(`/rooms/${fleet.steady.id}`);
    await next.page.getByText('Change this room').click();
    expect(await next.page.getByLabel('Travel, inches').inputValue()).toBe('37.8');
  });

  test('finds all written anew once its settings come, where the page came before them', async () => {
    await ask(api, 'PATCH', '/settings', { locale: 'de-DE', units: null });
    const { page } = await place.visit('/', { locale: 'en-US', serviceWorkers: 'block' });
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route('**/api/v1/settings', async (route) => {
      await held;
      await route.continue();
    });
    await signIn(page, place.person);
    const sentence = coaches(page).getByText(/^The running current of the front side is/);
    await sentence.getByText(/\d%/).waitFor();
    release();
    await sentence.getByText(/\d\s%/).waitFor();
  });
});
