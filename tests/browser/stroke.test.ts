import { beforeAll, expect, test } from 'vitest';
import { violationsOn } from './support/accessibility.ts';
import { ask } from './support/api.ts';
import { NARROW } from './support/devices.ts';
import { addFleet, type Fleet } from './support/fleet.ts';
import { addOwner } from './support/owner.ts';
import { describePages } from './support/place.ts';
import { standsStill } from './support/visitor.ts';

/** Adds up how much of the screen moved, and how far, while nobody touched it: the browser's own measure. */
const COUNT_MOVES = `
  window.moved = 0;
  new PerformanceObserver((list) => {
    for (const { value } of list.getEntries()) window.moved += value;
  }).observe({ type: 'layout-shift', buffered: true });
`;

describePages('one stroke', (place) => {
  let fleet: Fleet;
  beforeAll(async () => {
    fleet = await addFleet(await place.api());
  });

  test('shows both sides over travel and over time, in words too', async () => {
    const { page, troubles } = await place.visitAs(place.person, `/strokes/${fleet.strokeIds[0]}`);
    await page.getByRole('heading', { level: 1, name: 'Stroke going out' }).waitFor();
    const travel = page.getByRole('figure', { name: 'Along the travel' });
    await travel.getByText(/The front side: mostly about [89]\.\d\sA/).waitFor();
    await travel.locator('canvas').waitFor();
    const time = page.getByRole('figure', { name: 'Over time' });
    await time.getByText(/The front side: recorded for 21\.\d\ss/).waitFor();
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
    // biome-ignore lint/performance/useDomNodeTextContent: as it is laid out, the kind and the side each on a line.
    expect(await spike.innerText()).toMatch(/Spike\s+front\s+(3[5-9]|4[0-5])\s?%\s\((3[3-9]|4[0-4])\scm\)/);
  });

  test('is set aside with a note, and counted again', async () => {
    const { page } = await place.visitAs(place.person, `/strokes/${fleet.strokeIds[1]}`);
    await page.getByLabel('Why (optional)').fill('Somebody leaned on it.');
    await page.getByRole('button', { name: 'Set this stroke aside' }).click();
    await page.getByRole('button', { name: 'Count this stroke again' }).waitFor();
    await page.reload();
    await page.getByRole('button', { name: 'Count this stroke again' }).waitFor();
    expect(await page.getByLabel('Why (optional)').inputValue()).toBe('Somebody leaned on it.');
    await page.getByRole('button', { name: 'Count this stroke again' }).click();
    await page.getByRole('button', { name: 'Set this stroke aside' }).waitFor();
  });

  test('is corrected by those who may: its time, its way and its room', async () => {
    const { page, troubles } = await place.visitAs(place.person, `/strokes/${fleet.strokeIds[2]}`);
    await page.getByRole('heading', { level: 1, name: 'Stroke going out' }).waitFor();
    await page.getByText('Correct this record').click();
    await page.getByLabel('When it ran').fill('2126-04-02T10:30');
    await page.getByRole('button', { name: 'Save the correction' }).click();
    await page.getByText('This time is still to come.').waitFor();
    await page.getByLabel('When it ran').fill('2026-04-02T10:30');
    await page.getByLabel('Which way it ran').selectOption('Coming in (retract)');
    await page.getByLabel('Room', { exact: true }).selectOption('Dinette');
    expect(await violationsOn(page)).toEqual([]);
    await page.getByRole('button', { name: 'Save the correction' }).click();
    await page.getByRole('heading', { level: 1, name: 'Stroke coming in' }).waitFor();
    await page.getByText('2 Apr 2026, 10:30').waitFor();
    await page.getByRole('link', { name: 'Dinette' }).waitFor();
    const api = await place.api();
    expect(await ask(api, 'GET', `/strokes/${fleet.strokeIds[2]}`)).toMatchObject({
      startedAt: '2026-04-02T08:30:00.000Z',
      direction: 'retract',
      roomId: fleet.steady.id,
      placedBy: 'person',
    });
    expect(troubles).toEqual([]);
  });

  test('says at once that the network went, and nothing of it once it is back', async () => {
    const { page } = await place.visitAs(place.person, `/strokes/${fleet.strokeIds[8]}`);
    await page.getByRole('region', { name: 'Measures', exact: true }).waitFor();
    await standsStill(page);
    await page.context().setOffline(true);
    await page.getByText(/^No network now\. What you see is from .*;/).waitFor();
    await page.getByRole('region', { name: 'Measures', exact: true }).waitFor();
    await page.context().setOffline(false);
    await page.getByText(/No network now/).waitFor({ state: 'detached' });
  });

  test('is printed under its coach and room, with nothing to press', async () => {
    const { page } = await place.visitAs(place.person, `/strokes/${fleet.strokeIds[8]}`);
    await page.getByRole('figure', { name: 'Over time' }).locator('canvas').waitFor();
    await page.getByText('Correct this record').waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.getByRole('link', { name: 'Juniper 31' }).waitFor();
    await page.getByRole('link', { name: 'Bedroom' }).waitFor();
    for (const pressed of ['button', 'input', 'select', 'summary'])
      expect(await page.locator(pressed).filter({ visible: true }).count(), pressed).toBe(0);
  });

  test('is not offered to be corrected to an owner', async () => {
    const { page } = await place.visitAs(await addOwner(place), `/strokes/${fleet.strokeIds[4]}`);
    await page.getByRole('region', { name: 'Measures', exact: true }).waitFor();
    await page.getByRole('link', { name: 'Juniper 31' }).waitFor();
    expect(await page.getByText('Correct this record').count()).toBe(0);
  });

  test('moves nothing that is seen while it comes, on a phone and at a desk', async () => {
    for (const window of [NARROW, {}]) {
      const { page } = await place.visitAs(place.person, '/', window);
      await page.addInitScript(COUNT_MOVES);
      await page.route(/\/api\/v1\/(strokes|rooms)/, async (route) => {
        // One after the other, as over a weak signal: each answer is painted before the next comes.
        await page.evaluate(
          'new Promise((seen) => requestAnimationFrame(() => requestAnimationFrame(seen)))',
        );
        await route.continue();
      });
      await page.goto(`/strokes/${fleet.strokeIds[6]}`);
      await page.getByRole('figure', { name: 'Over time' }).locator('canvas').waitFor();
      await page.getByRole('region', { name: 'Measures', exact: true }).waitFor();
      await standsStill(page);
      expect(await page.evaluate('window.moved')).toBeLessThan(0.05);
    }
  });

  test('that could not be used says what it counts for and whom to call, with its caution before that', async () => {
    const api = await place.api();
    const flat = { side: 'front', rateHz: 10, amps: Array(80).fill(0) };
    const body = { key: 'flat', roomId: fleet.steady.id, direction: 'extend', sides: [flat] };
    const { results } = await ask<{ results: { strokeId: string }[] }>(api, 'POST', '/strokes', {
      ...body,
      startedAt: '2026-05-20T15:00:00Z',
    });
    const { page } = await place.visitAs(place.person, `/strokes/${results[0].strokeId}`);
    const note = page.locator('section', {
      has: page.getByRole('heading', { name: 'This stroke could not be used' }),
    });
    await note.last().waitFor();
    expect(await note.last().locator('p').allTextContents()).toEqual([
      expect.stringContaining('No side could be measured'),
      expect.stringMatching(/^Keep everyone out of the travel.* disconnect the supply before/),
      expect.stringMatching(/^It does not count .* checked\.$/),
    ]);
  });

  test('that is not there is said, not shown', async () => {
    const { page } = await place.visitAs(place.person, '/strokes/0199aaaa-0000-7000-8000-000000000001');
    await page.getByRole('heading', { level: 1, name: 'This stroke was not found' }).waitFor();
  });
});
