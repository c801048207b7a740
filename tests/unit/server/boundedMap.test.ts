import { expect, test } from 'vitest';
import { BoundedMap } from '../../../server/boundedMap.ts';

test('with one too many the one that was set longest ago is forgotten', () => {
  const map = new BoundedMap<string, number>(2);
  map.set('a', 1).set('b', 2).set('a', 3).set('c', 4);
  expect([...map]).toEqual([
    ['a', 3],
    ['c', 4],
  ]);
});
