import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { PHONE } from './support/devices.ts';
import { addFleet, type Fleet } from './support/fleet.ts';
import { describePages } from './support/place.ts';
import { standsStill } from './support/visitor.ts';

/** Makes all letters twice as large, as a reader's own setting does. */
async function doubleLetters(page: Page): Promise<void> {
  await standsStill(page);
  await page.evaluate(`document.documentElement.style.fontSize = '200%'`);
  await standsStill(page);
}

/** The words in what a selector finds that fall into two lines, or have no width at all. */
const brokenWords = (page: Page, selector: string) =>
  page.evaluate<string[]>(`[...document.querySelectorAll(${JSON.stringify(selector)})].flatMap((part) => {
    const walk = document.createTreeWalker(part, NodeFilter.SHOW_TEXT);
    const broken = [];
    while (walk.nextNode()) {
      for (const found of walk.currentNode.data.matchAll(/[^\\s]+/g)) {
        const word = document.createRange();
        word.setStart(walk.currentNode, found.index);
        word.setEnd(walk.currentNode, found.index + found[0].length);
        const lines = word.getClientRects();
        if (lines.length !== 1 || lines[0].width < 1) broken.push(found[0]);
      }
    }
    return broken;
  })`);

/** What of a selector is higher or wider than the place that it is shown in. */
const cutOff = (page: Page, selector: string) =>
  page.evaluate<string[]>(`[...document.querySelectorAll(${JSON.stringify(selector)})]
    .filter((part) => part.scrollHeight > part.clientHeight + 1 || part.scrollWidth > part.clientWidth + 1)
    .map((part) => part.textContent)`);

describePages('with letters of twice the size, on a phone', (place) => {
  let fleet: Fleet;
  beforeAll(async () => {
    fleet = await addFleet(await place.api());
  });

  test('each room of the list keeps its name, its verdict and its whole sentence', async () => {
    const { page } = await place.visitAs(place.person, '/?q=Juniper', PHONE);
    await page.locator('.room-name').nth(1).waitFor();
    await doubleLetters(page);
    expect(await page.locator('.room-name').allTextContents()).toEqual(['Bedroom', 'Dinette']);
    expect(await brokenWords(page, '.room-name, .room-line .verdict')).toEqual([]);
    expect(await cutOff(page, '.room-name, .room-headline')).toEqual([]);
  });

  test('each room of a coach keeps its name and its verdict', async () => {
    const { page } = await place.visitAs(place.person, `/coaches/${fleet.coach.id}`, PHONE);
    await page.locator('.answer-room').nth(1).waitFor();
    await doubleLetters(page);
    expect(await brokenWords(page, '.answer-room, .answer-word')).toEqual([]);
  });

  test('no word of a caution is broken', async () => {
    const { page } = await place.visitAs(place.person, `/rooms/${fleet.worsening.id}`, PHONE);
    await page.getByRole('heading', { name: 'Before you touch anything' }).first().waitFor();
    await doubleLetters(page);
    expect(await brokenWords(page, '.advice')).toEqual([]);
  });
});
