import { expect, test } from 'vitest';
import type { Link } from '../../../server/links/link.ts';
import { Links } from '../../../server/links/links.ts';

/** Links that say when they are told to close; as far as `Links` looks at one. */
function linksNamed(names: string, closed: string[]): Link[] {
  return [...names].map(
    (id) => ({ id, close: () => closed.push(id), settled: async () => undefined }) as unknown as Link,
  );
}

test('of one logger the latest four stay open, however quickly the others follow each other', () => {
  const closed: string[] = [];
  const links = new Links();
  for (const link of linksNamed('abcdefg', closed)) {
    links.add(link);
    links.signedIn(link, 'a logger');
  }
  for (const link of linksNamed('wxyz', closed)) links.signedIn(link, 'another one');
  expect(closed).toEqual(['a', 'b', 'c']);
});

test('one that is closed makes room for another', () => {
  const closed: string[] = [];
  const links = new Links();
  const all = linksNamed('abcde', closed);
  for (const link of all.slice(0, 4)) links.signedIn(link, 'a logger');
  links.remove(all[1]);
  links.signedIn(all[4], 'a logger');
  expect(closed).toEqual([]);
});
