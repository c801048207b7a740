import { expect, test } from 'vitest';
import { beginningOf } from '../../../dashboards/src/components/told/beginningOf.ts';

const words = (count: number) => 'word '.repeat(count).trimEnd();

test('a text that is hardly longer than its beginning is left whole', () => {
  expect(beginningOf(words(60))).toBe(words(60));
  expect(beginningOf('a\nb\nc\nd\ne')).toBe('a\nb\nc\nd\ne');
});

test('a longer one is cut between words, or behind its fourth line', () => {
  expect(beginningOf('window '.repeat(44))).toBe(`${'window '.repeat(34)}…`);
  expect(beginningOf('a\nb\nc\nd\ne\nf')).toBe('a\nb\nc\nd …');
});

test('one without a space is cut between characters, also where one takes two places', () => {
  expect(beginningOf('x'.repeat(400))).toBe(`${'x'.repeat(240)} …`);
  const room = '🏠';
  expect(beginningOf(`x${room.repeat(200)}`)).toBe(`x${room.repeat(119)} …`);
});
