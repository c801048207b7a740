import { beforeAll, expect, test } from 'vitest';
import { addFleet, type Fleet } from './support/fleet.ts';
import { describePages } from './support/place.ts';

describePages('one stroke', (place) => {
  let fleet: Fleet;
  beforeAll(async () => {
    fleet = await addFleet(await place.api());
  });

  test('shows both sides over travel and over time, in words too', async () => {
    const { page, troubles } = await place.visitAs(place.person, `/strokes/${fleet.strokeIds[0]}`);
    await page.getByRole('heading', { level: 1, name: 'Extend stroke' }).waitFor();
    const travel = page.getByRole('figure', { name: 'Along the travel' });
    await travel.getByText(/front: mostly about [89]\.\d\sA/).waitFor();
    await travel.locator('canvas').waitFor();
    const time = page.getByRole('figure', { name: 'Over time' });
    await time.getByText(/front: recorded for 21\.\d\ss/).waitFor();
    await time.locator('canvas').waitFor();
    await time.getByText('As a table').click();
    await time.getByRole('cell', { name: 'end stop' }).first().waitFor();
    expect(troubles).toEqual([]);
  });

  test('lists its measures by side, and each spike with its place in per cent and centimetres', async () => {
    const { page } = await place.visitAs(
      place.person,
      `/strokes/${fleet.strokeIds[fleet.strokeIds.length - 2]}`,
    );
    const measures = page.getByRole('region', { name: 'Measures', exact: true });
    const running = measures.getByRole('row').filter({ hasText: 'Running current (median)' });
    expect(await running.textContent()).toMatch(/1[23]\.\d\sA\s*8\.\d\sA/);
    const marks = page.getByRole('region', { name: 'Spikes and dips', exact: true });
    const spike = marks.getByRole('row').filter({ hasText: 'Spike' }).first();
    expect(await spike.textContent()).toMatch(/front\s*(3[5-9]|4[0-5])\s?%\s\((3[3-9]|4[0-4])\scm\)/);
  });

  test('is set aside with a note, and counted again', async () => {
    const { page } = await place.visitAs(place.person, `/strokes/${fleet.strokeIds[1]}`);
    await page.getByLabel('Why (if you like)').fill('Somebody leaned on it.');
    await page.getByRole('button', { name: 'Set this stroke aside' }).click();
    await page.getByRole('button', { name: 'Count this stroke again' }).waitFor();
    await page.reload();
    await page.getByRole('button', { name: 'Count this stroke again' }).waitFor();
    expect(await page.getByLabel('Why (if you like)').inputValue()).toBe('Somebody leaned on it.');
    await page.getByRole('button', { name: 'Count this stroke again' }).click();
    await page.getByRole('button', { name: 'Set this stroke aside' }).waitFor();
  });

  test('that is not there is said, not shown', async () => {
    const { page } = await place.visitAs(place.person, '/strokes/0199aaaa-0000-7000-8000-000000000001');
    await page.getByRole('heading', { level: 1, name: 'This stroke was not found' }).waitFor();
  });
});
