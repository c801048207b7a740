import { beforeAll, expect, test } from 'vitest';
import { PHONE } from './support/devices.ts';
import { addFleet, type Fleet } from './support/fleet.ts';
import { describePages } from './support/place.ts';
import { standsStill } from './support/visitor.ts';

/** What can be pressed and is lower than a finger, with its height. A tick is pressed by its label. */
const TOO_LOW = `
  [...document.querySelectorAll('a, button, select, summary, label:has(input)')]
    .map((one) => [one.textContent.trim().slice(0, 40), Math.round(one.getBoundingClientRect().height)])
    .filter(([, height]) => height > 0 && height < 44)
`;

/** Into how many lines the first word of the answer falls. */
const LINES_OF_FIRST_WORD = `{
  const walk = document.createTreeWalker(document.querySelector('.answer-word'), NodeFilter.SHOW_TEXT);
  const text = walk.nextNode();
  const word = document.createRange();
  word.setStart(text, 0);
  word.setEnd(text, text.data.trimEnd().split(' ')[0].length);
  word.getClientRects().length;
}`;

describePages('under a finger', (place) => {
  let fleet: Fleet;
  beforeAll(async () => {
    fleet = await addFleet(await place.api());
  });

  test('whatever can be pressed is as high as a finger', async () => {
    const { page } = await place.visitAs(place.person, '/', PHONE);
    for (const path of [
      '/',
      `/coaches/${fleet.coach.id}`,
      `/rooms/${fleet.worsening.id}`,
      `/rooms/${fleet.worsening.id}/compare`,
      `/strokes/${fleet.strokeIds[0]}`,
    ]) {
      await page.goto(path);
      await page.getByRole('heading', { level: 1 }).waitFor();
      await standsStill(page);
      expect(await page.evaluate(TOO_LOW), path).toEqual([]);
    }
  });

  test('a room and its verdict stand on one line', async () => {
    const { page } = await place.visitAs(place.person, `/coaches/${fleet.coach.id}`, PHONE);
    const answer = page.locator('.answer').first();
    const [room, word] = await Promise.all(
      ['.answer-room', '.answer-word .verdict'].map((part) => answer.locator(part).boundingBox()),
    );
    const middles = [room, word].map((box) => box!.y + box!.height / 2);
    expect(Math.abs(middles[0] - middles[1])).toBeLessThan(3);
  });

  test('a picture is most of its width, and its hint is a finger’s', async () => {
    const { page } = await place.visitAs(place.person, `/strokes/${fleet.strokeIds[0]}`, PHONE);
    const travel = page.getByRole('figure', { name: 'Along the travel' });
    const [plot, whole] = await Promise.all(
      ['.u-over', '.plot'].map((part) => travel.locator(part).boundingBox()),
    );
    expect((plot?.width ?? 0) / (whole?.width ?? 1)).toBeGreaterThan(0.7);
    await page.goto(`/rooms/${fleet.worsening.id}`);
    await page.getByText('Two fingers look closer.').first().waitFor();
    expect(await page.getByText('Drag across to look closer.').count()).toBe(0);
  });

  test('with letters twice as large the verdict stays whole words', async () => {
    const { page } = await place.visitAs(place.person, `/rooms/${fleet.worsening.id}`, PHONE);
    await page.locator('.answer-word').waitFor();
    await page.evaluate("document.documentElement.style.fontSize = '200%'");
    expect(await page.evaluate(LINES_OF_FIRST_WORD)).toBe(1);
  });
});
