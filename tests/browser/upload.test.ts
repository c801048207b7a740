import { mkdtemp, open, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, expect, test, vi } from 'vitest';
import { violationsOn } from './support/accessibility.ts';
import { type Api, ask } from './support/api.ts';
import { clampCsv, csvFile } from './support/csvFile.ts';
import { addCoach, addRoom } from './support/fleet.ts';
import { describePages } from './support/place.ts';
import { signIn } from './support/visitor.ts';

const withoutTimes = (csv: string): string =>
  csv
    .split('\r\n')
    .map((row) => row.slice(row.indexOf(';') + 1))
    .join('\r\n');

describePages('adding a recording from a file', (place) => {
  let api: Api;
  let roomId: string;
  beforeAll(async () => {
    api = await place.api();
    roomId = (await addRoom(api, await addCoach(api, 'Juniper 31'), 'Bedroom')).id;
  });

  async function openPage(path = `/rooms/${roomId}/upload`, options = {}) {
    const { page, troubles } = await place.visitAs(place.person, path, options);
    return { page, troubles };
  }
  const file = (page: Page) => page.getByLabel(/^Choose (a|another) file$/);
  const strokesOfRoom = async () =>
    (await ask<{ items: unknown[] }>(api, 'GET', `/rooms/${roomId}/strokes`)).items.length;

  async function correct(page: Page): Promise<void> {
    await page.getByLabel('What column 2 is').selectOption('front, current in amps');
    await page.getByLabel('What column 3 is').selectOption('rear, current in amps');
    await page.getByLabel('When the recording began').fill('2026-05-02T16:20:11');
    await page.getByText('It is ready to be stored.').waitFor();
  }

  test('shows how it will be cut and what each column is before anything is stored; then stores it once', async () => {
    const { page, troubles } = await openPage(`/rooms/${roomId}`);
    await page.getByRole('link', { name: 'Add a recording from a file' }).click();
    await file(page).setInputFiles(csvFile(clampCsv()));
    const picture = page.getByRole('figure', { name: 'The recording and its strokes' });
    await picture
      .getByText('2 strokes in 77.9 s of recording: 780 rows, columns separated by semicolons.')
      .waitFor();
    await picture.locator('canvas').waitFor();
    await page.getByText('Column 2: choose above what it is, or that it is not used.').waitFor();
    expect(await page.getByText('Which side is this?').count()).toBe(2);
    const store = page.getByRole('button', { name: 'Store these 2 strokes' });
    expect(await store.isDisabled()).toBe(true);
    expect(await page.getByLabel('Direction of stroke 1').inputValue()).toBe('extend');
    expect(await page.getByLabel('Direction of stroke 2').inputValue()).toBe('retract');
    await correct(page);
    expect(await strokesOfRoom()).toBe(0);
    await store.click();
    await page.getByRole('heading', { name: 'Stored' }).waitFor();
    await page.getByText('2 strokes were stored.').waitFor();
    expect(await strokesOfRoom()).toBe(2);

    await file(page).setInputFiles(csvFile(clampCsv()));
    await correct(page);
    await store.click();
    await page.getByText('2 strokes were there already').waitFor();
    expect(await strokesOfRoom()).toBe(2);
    await page.getByRole('link', { name: 'Open stroke 2' }).click();
    await page.getByRole('heading', { level: 1, name: 'Stroke coming in' }).waitFor();
    expect(troubles).toEqual([]);
  });

  test('asks for another start where that lies in the future or long ago, and stores nothing until then', async () => {
    const { page } = await openPage();
    await file(page).setInputFiles(csvFile(clampCsv('t;front A;rear A;supply V')));
    const start = page.getByLabel('When the recording began');
    const store = page.getByRole('button', { name: 'Store these 2 strokes' });
    await start.fill('2126-05-02T16:20:11');
    const future = page.getByText('This start is in the future. Enter when it was recorded.');
    await future.first().waitFor();
    expect(await future.count()).toBe(2);
    expect(await store.isDisabled()).toBe(true);
    await start.fill('2014-05-02T16:20:11');
    await page.getByText('This start is before 2015. Enter when it was recorded.').first().waitFor();
    expect(await store.isDisabled()).toBe(true);
    await start.fill('2026-05-06T16:20:11');
    await page.getByText('It is ready to be stored.').waitFor();
    expect(await store.isDisabled()).toBe(false);
  });

  test('keeps a rate that is being typed when what is made of a chosen column comes meanwhile', async () => {
    const { page } = await openPage();
    await file(page).setInputFiles(csvFile(withoutTimes(clampCsv())));
    const rate = page.getByLabel('Samples a second');
    await rate.waitFor();
    const held: (() => void)[] = [];
    await page.route('**/strokes/preview?**', async (route) => {
      await new Promise<void>((go) => held.push(go));
      await route.continue();
    });
    await page.getByLabel('What column 1 is').selectOption('front, current in amps');
    await page.getByText('Reading the file').waitFor();
    await rate.pressSequentially('10');
    await vi.waitFor(() => expect(held).toHaveLength(1));
    held[0]();
    await page.getByText('Reading the file').waitFor({ state: 'detached' });
    expect(await rate.inputValue()).toBe('10');
    await page.unroute('**/strokes/preview?**');
    await rate.press('Tab');
    await page.getByText('2 strokes in 77.9 s of recording').waitFor();
    expect(await rate.inputValue()).toBe('10');
  });

  test('takes a file that is dropped, and a direction that is chosen', async () => {
    const { page } = await openPage();
    const unsigned = clampCsv('t;front A;rear A;supply V').replaceAll('-', '');
    const dropped = await page.evaluateHandle(`(() => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([${JSON.stringify(unsigned)}], 'dropped.csv', { type: 'text/csv' }));
      return transfer;
    })()`);
    await page.locator('.drop').dispatchEvent('drop', { dataTransfer: dropped });
    await page.getByText('dropped.csv').waitFor();
    await page.getByText('Stroke 1: the sign of the current does not tell the direction.').waitFor();
    await page.getByLabel('Direction of stroke 1').selectOption('Going out (extend)');
    await page.getByLabel('Direction of stroke 2').selectOption('Coming in (retract)');
    await page.getByLabel('When the recording began').fill('2026-05-03T16:20:11');
    await page.getByText('It is ready to be stored.').waitFor();
    await page.getByRole('button', { name: 'Store these 2 strokes' }).click();
    await page.getByRole('link', { name: 'Open stroke 2' }).click();
    await page.getByRole('heading', { level: 1, name: 'Stroke coming in' }).waitFor();
  });

  test('a wrong file is told as what it is, and loses nothing entered', async () => {
    const { page, troubles } = await openPage();
    await file(page).setInputFiles(csvFile(clampCsv()));
    await page.getByLabel('When the recording began').fill('2026-05-04T16:20:11');
    await page.getByLabel('What column 2 is').selectOption('front, current in amps');
    const picture = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]);
    await file(page).setInputFiles({ name: 'photo.png', mimeType: 'image/png', buffer: picture });
    await page.getByRole('alert').getByText('another file that is not text').waitFor();
    await file(page).setInputFiles({ name: 'empty.csv', mimeType: 'text/csv', buffer: Buffer.alloc(0) });
    await page.getByRole('alert').getByText('The file is empty.').waitFor();
    const folder = await mkdtemp(join(tmpdir(), 'slideload-upload-'));
    try {
      const large = await open(join(folder, 'a season.csv'), 'w');
      await large.truncate(200 * 1024 * 1024);
      await large.close();
      await file(page).setInputFiles(join(folder, 'a season.csv'));
      await page.getByRole('alert').getByText('The file has 200 MB; at most 32.0 MB').waitFor();
    } finally {
      await rm(folder, { recursive: true });
    }
    expect(await page.getByLabel('When the recording began').inputValue()).toBe('2026-05-04T16:20:11');
    expect(await page.getByLabel('What column 2 is').inputValue()).toBe('side/front/A');
    await page.getByText('clamp.csv').waitFor();

    const words = csvFile('name,remark\nMara,sticks\nJem,squeaks\n', 'notes.csv');
    await file(page).setInputFiles(words);
    await page.getByText('Line 2, column 1: Must be a number').waitFor();
    expect(await page.getByLabel('When the recording began').inputValue()).toBe('2026-05-04T16:20:11');
    expect(await page.getByRole('button', { name: 'No stroke to store' }).isDisabled()).toBe(true);
    expect(troubles).toEqual([]);
  });

  test('passes over what a meter writes above its table, and says of a table without titles what to do', async () => {
    const { page, troubles } = await openPage();
    await file(page).setInputFiles(csvFile(`Model;M 1\r\nSerial;123\r\n\r\n${clampCsv()}`));
    await page.getByText(/kB · The 3 lines above the titles are skipped\.$/).waitFor();
    await page.getByRole('cell', { name: 'Ch1' }).waitFor();
    await page.getByText('Column 2: choose above').waitFor();

    await file(page).setInputFiles(csvFile(clampCsv().replace(/^.*\r\n/, '')));
    await page.getByText('The file has no titles. Choose above what each column is.').waitFor();
    expect(await page.getByText('skipped').count()).toBe(0);
    expect(await page.getByText('header row').count()).toBe(0);
    await page.getByLabel('What column 1 is').selectOption('Time in seconds, or date and time');
    await page.getByLabel('What column 2 is').selectOption('front, current in amps');
    await page.getByText('2 strokes in').waitFor();
    expect(troubles).toEqual([]);
  });

  test('says of another file nothing that was said of the one before', async () => {
    const { page } = await openPage();
    await file(page).setInputFiles(csvFile(clampCsv()));
    await correct(page);
    await page.route('**/api/v1/strokes?**', (route) => route.abort());
    await page.getByRole('button', { name: 'Store these 2 strokes' }).click();
    const said = page.getByText('The service cannot be reached.');
    await said.waitFor();
    await file(page).setInputFiles(csvFile(clampCsv(), 'another.csv'));
    await page.getByText(/^another\.csv/).waitFor();
    await page.getByText('Column 2: choose above').waitFor();
    expect(await said.count()).toBe(0);
  });

  test('a session lost in mid-edit loses nothing entered', async () => {
    const { page } = await openPage();
    await file(page).setInputFiles(csvFile(clampCsv()));
    await page.getByLabel('What column 2 is').selectOption('front, current in amps');
    // What was made of that has come: nothing that is on its way tells the page before somebody goes on.
    await page.getByText('Column 2: choose above').waitFor({ state: 'detached' });
    await page.getByText('Reading the file').waitFor({ state: 'detached' });
    await page.context().clearCookies();
    await page.getByLabel('What column 3 is').selectOption('rear, current in amps');
    await page.getByText('You were signed out.').waitFor();
    await signIn(page, place.person);
    expect(await page.getByLabel('What column 2 is').inputValue()).toBe('side/front/A');
    await page.getByLabel('When the recording began').fill('2026-05-05T16:20:11');
    await page.getByText('It is ready to be stored.').waitFor();
    await page.getByRole('button', { name: 'Store these 2 strokes' }).click();
    await page.getByText('2 strokes were stored.').waitFor();
  });

  test.each([
    { colorScheme: 'light', viewport: { width: 320, height: 640 } },
    { colorScheme: 'dark', viewport: { width: 1440, height: 900 } },
  ] as const)('breaks no rule of accessibility ($colorScheme, $viewport.width wide)', async (look) => {
    const { page } = await openPage(`/rooms/${roomId}/upload`, look);
    await file(page).waitFor({ state: 'attached' });
    expect(await violationsOn(page), 'before').toEqual([]);
    await file(page).setInputFiles({ name: 'none.csv', mimeType: 'text/csv', buffer: Buffer.alloc(0) });
    await page.getByRole('alert').waitFor();
    await file(page).setInputFiles(csvFile(clampCsv()));
    await page.locator('canvas').waitFor();
    expect(await violationsOn(page), 'with a file, to be corrected').toEqual([]);
    const sideways = 'document.documentElement.scrollWidth - document.documentElement.clientWidth';
    expect(await page.evaluate(sideways)).toBe(0);
  });
});
