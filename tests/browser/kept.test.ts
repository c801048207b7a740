import { expect, test } from 'vitest';
import { violationsOn } from './support/accessibility.ts';
import { ask } from './support/api.ts';
import { PHONE } from './support/devices.ts';
import { describePages } from './support/place.ts';

describePages('how long recordings are kept', (place) => {
  const kept = async () =>
    (await ask<{ traceMonths: number | null }>(await place.api(), 'GET', '/account')).traceMonths;

  test('a dealer reads what a span removes before it is set, and takes it back', async () => {
    const { page, troubles } = await place.visitAs(place.person, '/settings', PHONE);
    await page.getByRole('link', { name: 'How long recordings are kept' }).click();
    const span = page.getByLabel('Keep recordings');
    expect(await span.inputValue()).toBe('');
    await page.getByText('Nothing has been removed yet.').waitFor();
    await span.selectOption('1 year');
    await page.getByText(/more than 1 year ago are removed tonight.*Nobody can bring them back/).waitFor();
    expect(await kept()).toBeNull();
    expect(await violationsOn(page)).toEqual([]);

    await page.getByRole('button', { name: 'Remove what is older' }).click();
    await page.getByText('Saved.').waitFor();
    expect(await kept()).toBe(12);
    await page.reload();
    await expect.poll(() => span.inputValue()).toBe('12');

    await span.selectOption('For ever');
    await page.getByRole('button', { name: 'Keep them for ever' }).click();
    await page.getByText('Saved.').waitFor();
    expect(await kept()).toBeNull();
    expect(troubles).toEqual([]);
  });

  test('another span than those that are offered stands among them', async () => {
    await ask(await place.api(), 'PATCH', '/account', { traceMonths: 18 });
    const { page } = await place.visitAs(place.person, '/kept');
    await expect.poll(() => page.getByLabel('Keep recordings').inputValue()).toBe('18');
    await page.getByText(/more than 18 months ago/).waitFor();
  });
});
