import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { ask } from './support/api.ts';
import { addCoach, addRoom, allAnalysed, sendDays } from './support/fleet.ts';
import { describePages } from './support/place.ts';

const DAYS_BEFORE = 6;
/** As much as somebody writes who writes much. */
const NOTES =
  `Two were proud. ${'The rack was cleaned and the screws were seated with the torque of the manual. '.repeat(4)}`.trim();
const WORK_AT = '2026-04-07T08:00:00Z';

describePages('before and after', (place) => {
  let roomId: string;
  let coachId: string;
  beforeAll(async () => {
    const api = await place.api();
    const coach = await addCoach(api, 'Juniper 31');
    const room = await addRoom(api, coach, 'Bedroom');
    roomId = room.id;
    coachId = coach.id;
    await sendDays(
      api,
      coach,
      room,
      (day) => [
        {
          side: 'front',
          runningAmps: day < DAYS_BEFORE ? 12 : 9,
          spikeAt: day < DAYS_BEFORE ? 0.4 : undefined,
        },
        { side: 'rear', runningAmps: 8.2 },
      ],
      2 * DAYS_BEFORE,
    );
    const work = { kind: 'fasteners-seated', at: WORK_AT, side: 'front', notes: NOTES };
    await ask(api, 'POST', `/rooms/${room.id}/services`, work);
    await ask(api, 'POST', `/rooms/${room.id}/services`, { kind: 'lubricated', at: '2026-06-01T08:00:00Z' });
    await allAnalysed(api, room);
  });

  test('is three actions at most from opening the coach', async () => {
    const { page } = await place.visitAs(place.person, '/');
    await page.goto(`/coaches/${coachId}`);
    const actions = [
      () =>
        page
          .getByRole('link', { name: /Bedroom/ })
          .first()
          .click(),
      () => page.getByRole('link', { name: /^Before and after: Fasteners seated/ }).click(),
    ];
    for (const act of actions) await act();
    await page.getByRole('heading', { level: 2, name: 'What was found' }).waitFor();
    expect(actions.length).toBeLessThanOrEqual(3);
  });

  async function openSheet(): Promise<{ page: Page; troubles: string[] }> {
    const { page, troubles } = await place.visitAs(place.person, '/');
    await page.getByRole('link', { name: /^Bedroom/ }).click();
    await page.getByRole('link', { name: /^Before and after: Fasteners seated/ }).click();
    await page.getByRole('heading', { level: 2, name: 'What was found' }).waitFor();
    return { page, troubles };
  }

  test('is two links away from the list, and says the finding before all else', async () => {
    const { page, troubles } = await openSheet();
    const finding = page.getByRole('region', { name: 'What was found' });
    await finding
      .getByText(/^(Yes|In part).*: since “Fasteners seated, front” on 7 Apr 2026 the room draws less/)
      .waitFor();
    await finding.getByText(/the front side draws \d+% less than before/i).waitFor();
    await page.getByRole('definition').filter({ hasText: 'Juniper 31' }).waitFor();
    await page.getByRole('definition').filter({ hasText: 'Two were proud.' }).waitFor();
    const first = await page.locator('main section').first().getAttribute('aria-labelledby');
    expect(first).toBe('finding');
    expect(troubles).toEqual([]);
  });

  test('tells each shift with its interval, in words and as a picture', async () => {
    const { page } = await openSheet();
    const front = page.getByRole('figure', { name: 'The front side, going out' });
    const running = front.getByRole('row', { name: /^Running current \(median\)/ });
    await running.getByText(/\d\sA less \(.*\sA to .*\sA\)/).waitFor();
    expect(await running.locator('svg.interval-sure').count()).toBe(1);
    expect(await front.locator('.profile-band').count()).toBe(2);
    await front.getByText(/^[456] strokes before, 6 after/).waitFor();
    await front.getByText(/^Clearly changed: \d.*\sA less along the whole travel\.$/).waitFor();
    const rear = page.getByRole('figure', { name: 'The rear side, coming in' });
    const unmoved = rear.getByRole('row', { name: /^Running current \(median\)/ });
    await unmoved.getByText(/^No clear change: /).waitFor();
    expect(await unmoved.locator('svg.interval-sure').count()).toBe(0);
  });

  test('prints on one page, with its cautions and its method, and without the controls', async () => {
    const { page } = await openSheet();
    await page.emulateMedia({ media: 'print' });
    await page.getByText('local codes come first').waitFor();
    await page.getByText('How it was worked out.').waitFor();
    // It has a frame for that.
    await page.getByText('not a promise that a room may be stood under').waitFor();
    expect(await page.getByText('Look before you move a room').isVisible()).toBe(false);
    expect(await page.getByRole('button', { name: 'Print or save as PDF' }).isVisible()).toBe(false);
    expect(await page.getByRole('navigation', { name: 'Main' }).isVisible()).toBe(false);
    const picture = await page.locator('.profile svg').first().boundingBox();
    expect(picture?.height).toBeGreaterThan(45);
    for (const format of ['A4', 'Letter']) {
      const paper = (await page.pdf({ format })).toString('latin1');
      expect(paper.match(/\/Type\s*\/Page\b/g), format).toHaveLength(1);
    }
  });

  test('compares any two spans of days, and says what is missing', async () => {
    const { page } = await place.visitAs(place.person, `/rooms/${roomId}/compare`);
    await page.getByRole('button', { name: 'Compare' }).click();
    expect(await page.getByText('Enter a day.').count()).toBe(4);
    await page.getByLabel('Before: first day').fill('2026-04-01');
    await page.getByLabel('Before: last day').fill('2026-04-06');
    await page.getByLabel('After: first day').fill('2026-04-12');
    await page.getByLabel('After: last day').fill('2026-04-07');
    await page.getByText('The last day is before the first.').waitFor();
    await page.getByLabel('After: first day').fill('2026-04-07');
    await page.getByLabel('After: last day').fill('2026-04-12');
    await page.getByRole('button', { name: 'Compare' }).click();
    await page.getByText(/the front side draws \d+% less than before/i).waitFor();
    await page.goBack();
    await page.getByText('Choose the work').waitFor();
    // A link that was cut short in a message names no work.
    await page.goto(`/rooms/${roomId}/compare?service=01a21718-0512`);
    await page.getByText('Choose the work').waitFor();
    expect(await page.getByRole('alert').count()).toBe(0);
  });

  test.each([
    [
      'after earlier than before',
      '2026-04-07',
      '2026-04-12',
      '2026-04-01',
      '2026-04-06',
      'This is earlier than',
    ],
    ['spans that overlap', '2026-04-01', '2026-04-08', '2026-04-07', '2026-04-12', 'The two spans overlap.'],
    ['days to come', '2026-04-01', '2026-04-08', '2126-04-07', '2126-04-12', 'This day is still to come.'],
    [
      'a span that ends first',
      '2026-04-06',
      '2026-04-01',
      '2026-04-07',
      '2026-04-12',
      'The last day is before',
    ],
  ])('says of %s what is wrong, and asks nothing, by the form and by a link', async (_, ...given) => {
    const [beforeFrom, beforeTo, afterFrom, afterTo, said] = given;
    const { page } = await place.visitAs(place.person, `/rooms/${roomId}/compare`);
    const asked: string[] = [];
    page.on('request', (request) => request.url().includes('/comparison?') && asked.push(request.url()));
    await page.getByLabel('Before: first day').fill(beforeFrom);
    await page.getByLabel('Before: last day').fill(beforeTo);
    await page.getByLabel('After: first day').fill(afterFrom);
    await page.getByLabel('After: last day').fill(afterTo);
    await page.getByRole('button', { name: 'Compare' }).click();
    await page.getByText(said).first().waitFor();
    expect(new URL(page.url()).search).toBe('');
    await page.goto(
      `/rooms/${roomId}/compare?${new URLSearchParams({ beforeFrom, beforeTo, afterFrom, afterTo })}`,
    );
    await page.getByRole('region', { name: 'These two spans cannot be compared.' }).getByText(said).waitFor();
    expect(await page.getByLabel('After: last day').inputValue()).toBe(afterTo);
    expect(asked).toEqual([]);
  });

  test('of work that was deleted since says so, and offers the other work', async () => {
    const api = await place.api();
    const gone = await ask<{ id: string }>(api, 'POST', `/rooms/${roomId}/services`, {
      kind: 'cleaned',
      at: '2026-04-05T08:00:00Z',
    });
    await place.service().request('DELETE', `/services/${gone.id}`, { token: api.token });
    const { page } = await place.visitAs(place.person, `/rooms/${roomId}/compare?service=${gone.id}`);
    await page.getByText('no longer on record').waitFor();
    expect(await page.getByText('/service').count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Print or save as PDF' }).count()).toBe(0);
    await page.getByRole('link', { name: 'Juniper 31' }).waitFor();
    await page.getByRole('link', { name: /^Fasteners seated/ }).click();
    await page.getByRole('heading', { level: 2, name: 'What was found' }).waitFor();
    expect(await page.getByText('no longer on record').count()).toBe(0);
  });

  test('with too few strokes says how many there are and what it takes', async () => {
    const { page } = await place.visitAs(place.person, `/rooms/${roomId}/compare`);
    await page.getByRole('link', { name: /^Lubricated/ }).click();
    const finding = page.getByRole('region', { name: 'What was found' });
    await finding.getByText('no comparison can be made').waitFor();
    await finding.getByText('It takes two strokes before the work and two after it').waitFor();
    await finding.getByText('The front side, going out: 6 strokes before, 0 after').waitFor();
    expect(await page.getByRole('figure').count()).toBe(0);
  });
});
