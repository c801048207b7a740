import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compareTold, GONE_AFTER_MS, type Standing, type Told } from '../../../server/notices/compareTold.ts';

const NOW = new Date('2026-05-02T12:00:00Z');
const hours = (n: number) => new Date(NOW.getTime() + n * 3_600_000);

function standing(warningId: string, more: Partial<Standing> = {}): Standing {
  return {
    warningId,
    kind: 'rising-draw',
    side: 'front',
    direction: null,
    severity: 'service',
    openedAt: hours(-5),
    clearedAt: null,
    ...more,
  };
}
const told = (warningId: string, more: Partial<Told> = {}): Told => ({
  ...standing(warningId),
  open: true,
  revision: 1,
  missingSince: null,
  ...more,
});
const events = (now: readonly Standing[], before: readonly Told[]) =>
  compareTold(now, before, NOW).news.map(({ event, told: { warningId } }) => `${event} ${warningId}`);

describe('what is news', () => {
  test.each<[string, Standing[], Told[], string[]]>([
    ['a warning that is new', [standing('a')], [], ['warning.opened a']],
    ['not one that came and went', [standing('a', { clearedAt: NOW })], [], []],
    ['not one that was told', [standing('a')], [told('a')], []],
    [
      'one that is worse than ever told',
      [standing('a', { severity: 'stop' })],
      [told('a')],
      ['warning.worse a'],
    ],
    ['not one that is milder', [standing('a', { severity: 'watch' })], [told('a')], []],
    ['one that has cleared', [standing('a', { clearedAt: NOW })], [told('a')], ['warning.cleared a']],
    [
      'not one that was told to have cleared',
      [standing('a', { clearedAt: NOW })],
      [told('a', { open: false })],
      [],
    ],
    ['one that is open again', [standing('a')], [told('a', { open: false })], ['warning.opened a']],
    ['not one under another id', [standing('b')], [told('a')], []],
    ['one of another side', [standing('b', { side: 'rear' })], [told('a')], ['warning.opened b']],
    [
      'one that opened after the other had cleared',
      [standing('b')],
      [told('a', { open: false, openedAt: hours(-9), clearedAt: hours(-8) })],
      ['warning.opened b'],
    ],
    [
      'one beside another that still stands',
      [standing('a'), standing('b')],
      [told('a')],
      ['warning.opened b'],
    ],
    ['not one that is away for a moment', [], [told('a')], []],
    ['not one that is away for less than a day', [], [told('a', { missingSince: hours(-23) })], []],
    ['one that stayed away for a day', [], [told('a', { missingSince: hours(-24) })], ['warning.cleared a']],
  ])('%s', (_, now, before, news) => {
    expect(events(now, before)).toEqual(news);
  });
});

test('what stays away is looked at again when its day is over', () => {
  expect(compareTold([], [told('a')], NOW).lookAgainAt).toEqual(new Date(NOW.getTime() + GONE_AFTER_MS));
  expect(compareTold([standing('a')], [told('a')], NOW).lookAgainAt).toBeNull();
});

const anyStanding = fc.record({
  warningId: fc.constantFrom('a', 'b', 'c', 'd'),
  kind: fc.constantFrom('rising-draw', 'late-side'),
  side: fc.constantFrom('front', 'rear', null),
  direction: fc.constant(null),
  severity: fc.constantFrom('watch' as const, 'service' as const, 'stop' as const),
  openedAt: fc.integer({ min: -20, max: -10 }).map(hours),
  clearedAt: fc.option(fc.integer({ min: -9, max: 0 }).map(hours)),
});
const anyWarnings = fc.uniqueArray(anyStanding, { selector: ({ warningId }) => warningId });

test('whatever was told before, the same again is no news', () => {
  fc.assert(
    fc.property(anyWarnings, anyWarnings, (before, now) => {
      const first = compareTold(before, [], NOW);
      const second = compareTold(now, first.told, NOW);
      expect(compareTold(now, second.told, NOW).news).toEqual([]);
      // What is known of a warning is known once.
      expect(new Set(second.told.map(({ warningId }) => warningId)).size).toBe(second.told.length);
    }),
  );
});

test('every telling of a warning has a number of its own', () => {
  fc.assert(
    fc.property(fc.array(anyWarnings, { maxLength: 8 }), (history) => {
      const numbers: number[] = [];
      let known: readonly Told[] = [];
      for (const now of history) {
        const compared = compareTold(now, known, NOW);
        numbers.push(...compared.news.map(({ number }) => number));
        known = compared.told;
      }
      expect(numbers).toEqual(numbers.map((_, i) => i + 1));
    }),
  );
});
