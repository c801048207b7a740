import { expect, test } from 'vitest';
import {
  beginStayMemory,
  mayBeStiffness,
  mayBeThePlace,
  noteStay,
} from '../../../../analysis/findings/stay.ts';
import type { Direction } from '../../../../analysis/trace.ts';

const HOUR_MS = 3_600_000;

function stayAfter(strokes: readonly (readonly [number, Direction])[]) {
  const stay = beginStayMemory();
  for (const [hour, direction] of strokes) noteStay(stay, hour * HOUR_MS, direction);
  return stay;
}

test.each([
  {
    name: 'strokes of some days at one camp',
    strokes: [
      [0, 'extend'],
      [16, 'retract'],
      [24, 'extend'],
    ],
    count: 3,
  },
  {
    name: 'in after a fortnight: nobody drives with a room out',
    strokes: [
      [0, 'extend'],
      [336, 'retract'],
    ],
    count: 2,
  },
  {
    name: 'out again after days on the road',
    strokes: [
      [0, 'extend'],
      [16, 'retract'],
      [100, 'extend'],
    ],
    count: 1,
  },
  {
    name: 'only extends are recorded',
    strokes: [
      [0, 'extend'],
      [100, 'extend'],
      [101, 'extend'],
    ],
    count: 2,
  },
] as const)('$name', ({ strokes, count }) => {
  expect(stayAfter(strokes).strokes).toBe(count);
});

test('a shift that came with the stay may be the ground; one that came during it, or lasted over two, is not', () => {
  const stay = { ...beginStayMemory(), strokes: 6 };
  expect([6, 5].map((run) => mayBeThePlace(stay, run))).toEqual([true, true]);
  expect([3, 4, 7, 12].map((run) => mayBeThePlace(stay, run))).toEqual([false, false, false, false]);
});

test('a shift that came with the first strokes after a season of standing may be stiffness, for six of them', () => {
  const winter: (readonly [number, Direction])[] = [
    [0, 'extend'],
    [16, 'retract'],
    [24 * 120, 'extend'],
  ];
  const after = (more: number) =>
    stayAfter([
      ...winter,
      ...Array.from({ length: more }, (_, i) => [24 * (121 + i), i % 2 ? 'extend' : 'retract'] as const),
    ]);
  expect(mayBeStiffness(stayAfter(winter.slice(0, 2)), 1)).toBe(false);
  expect([0, 2, 5].map((more) => mayBeStiffness(after(more), more + 1))).toEqual([true, true, true]);
  expect([0, 2, 5].map((more) => mayBeStiffness(after(more), more + 3))).toEqual([false, false, false]);
  expect(mayBeStiffness(after(6), 7)).toBe(false);
});
