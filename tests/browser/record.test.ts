import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { ask } from './support/api.ts';
import { NARROW } from './support/devices.ts';
import { describePages } from './support/place.ts';
import { signIn } from './support/visitor.ts';

describePages('the record', (place) => {
  test('a dealer reads who did what, asks for a part of it and saves it', async () => {
    const api = await place.api();
    const coachId = (await ask<{ id: string }>(api, 'POST', '/coaches', { name: 'Tern 5' })).id;
    const room = { name: 'Den', drive: 'other', sides: ['main'] };
    const { id } = await ask<{ id: string }>(api, 'POST', `/coaches/${coachId}/rooms`, room);
    await ask(api, 'POST', `/rooms/${id}/services`, { kind: 'lubricated', at: '2026-05-02T10:00:00Z' });
    const { page, troubles } = await place.visit('/people', NARROW);
    await signIn(page, place.person);
    await page.getByRole('link', { name: 'Who did what' }).click();
    const work = page.getByRole('listitem').filter({ hasText: 'Work recorded' });
    await work.first().waitFor();
    expect(await work.first().textContent()).toMatch(/Lubricated.*Tern 5\s*Mara/s);
    await page.getByText('Signed in').first().waitFor();

    await page.getByLabel('What').selectOption('Work and warnings');
    await page.getByText('Signed in').first().waitFor({ state: 'detached' });
    await page.getByLabel('Who').selectOption('Mara');
    await work.first().waitFor();
    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as CSV' }).click();
    const csv = await readFile(await (await saved).path(), 'utf8');
    expect(csv).toContain('service-recorded');
    expect(csv).not.toContain('signed-in');
    // The question stands in the address.
    await page.reload();
    await work.first().waitFor();
    await page.getByLabel('Until').fill('2001-01-01');
    await page.getByRole('heading', { name: 'Nothing of this kind was done' }).waitFor();
    await page.getByRole('button', { name: 'Show all of it' }).click();
    await page.getByText('Signed in').first().waitFor();
    expect(troubles).toEqual([]);
  });
});
