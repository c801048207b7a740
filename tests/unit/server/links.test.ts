import { expect, test } from 'vitest';
import type { Link } from '../../../server/links/link.ts';
import { Links } from '../../../server/links/links.ts';
import { MOST_OF_ONE_LOGGER } from '../../../server/links/loggerShare.ts';

/** Links that say when they are told to close or to hold back; as far as `Links` looks at one. */
function linksNamed(ids: readonly string[], closed: string[], heldBack: string[] = []): Link[] {
  return ids.map(
    (id) =>
      ({
        id,
        strokes: 1,
        close: () => closed.push(id),
        holdBack: () => heldBack.push(id),
        settled: async () => undefined,
      }) as unknown as Link,
  );
}

const numbered = (count: number) => Array.from({ length: count }, (_, i) => `${i}`);

test('of one logger the latest stay open, however quickly the others follow each other', () => {
  const closed: string[] = [];
  const links = new Links();
  for (const link of linksNamed(numbered(MOST_OF_ONE_LOGGER.links + 3), closed)) {
    links.add(link);
    links.signedIn(link, 'a logger');
  }
  for (const link of linksNamed(['w', 'x', 'y', 'z'], closed)) links.signedIn(link, 'another one');
  expect(closed).toEqual(['0', '1', '2']);
});

test('one that is closed makes room for another', () => {
  const closed: string[] = [];
  const links = new Links();
  const all = linksNamed(numbered(MOST_OF_ONE_LOGGER.links + 1), closed);
  for (const link of all.slice(0, -1)) links.signedIn(link, 'a logger');
  links.remove(all[1]);
  const share = links.signedIn(all[MOST_OF_ONE_LOGGER.links], 'a logger');
  expect([closed, share.strokes]).toEqual([[], MOST_OF_ONE_LOGGER.links]);
});

test('all links of one logger hold back together, and no others', () => {
  const heldBack: string[] = [];
  const links = new Links();
  const [share] = linksNamed(['a', 'b'], [], heldBack).map((link) => links.signedIn(link, 'a logger'));
  for (const link of linksNamed(['z'], [], heldBack)) links.signedIn(link, 'another one');
  share.count(MOST_OF_ONE_LOGGER.bytes);
  expect([share.isFull, heldBack]).toEqual([false, []]);
  share.count(1);
  expect([share.isFull, heldBack]).toEqual([true, ['a', 'b']]);
  share.count(1);
  share.count(-2);
  expect([share.isFull, heldBack]).toEqual([false, ['a', 'b', 'a', 'b']]);
});
