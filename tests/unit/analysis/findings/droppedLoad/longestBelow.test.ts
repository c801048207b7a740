import { expect, test } from 'vitest';
import { longestBelow } from '../../../../../analysis/findings/droppedLoad/longestBelow.ts';

const GAP = Number.NaN;

test.each([
  { name: 'no bin is low', ratios: [1, 0.9, 0.5], found: { first: 0, bins: 0, known: 0 } },
  { name: 'the longer of two', ratios: [0.1, 1, 0.1, 0.2, 1], found: { first: 2, bins: 2, known: 2 } },
  {
    name: 'the first of two as long',
    ratios: [0.1, 0.1, 1, 0.1, 0.1],
    found: { first: 0, bins: 2, known: 2 },
  },
  {
    name: 'over a gap within it',
    ratios: [1, 0.1, GAP, GAP, 0.2, 1],
    found: { first: 1, bins: 4, known: 2 },
  },
  {
    name: 'not over gaps beside it',
    ratios: [GAP, 0.1, 0.1, GAP, 1],
    found: { first: 1, bins: 2, known: 2 },
  },
  {
    name: 'not over a gap beyond which the side drives',
    ratios: [0.1, GAP, 1, 0.1],
    found: { first: 0, bins: 1, known: 1 },
  },
  {
    name: 'what lies at the limit is not below it',
    ratios: [0.5, 0.4],
    found: { first: 1, bins: 1, known: 1 },
  },
])('the longest stretch below a limit: $name', ({ ratios, found }) => {
  expect(longestBelow(Float64Array.from(ratios), 0.5)).toEqual(found);
});
