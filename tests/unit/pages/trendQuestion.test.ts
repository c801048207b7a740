import { expect, test } from 'vitest';
import { trendQuestionOf, trendSearch } from '../../../dashboards/src/room/trend/trendQuestion.ts';

const USUAL = { measure: 'runningAmps', direction: 'extend', scale: 'adjusted' } as const;

test('an address without a question asks for the running current going out', () => {
  expect(trendQuestionOf('')).toEqual(USUAL);
  expect(trendSearch(USUAL)).toBe('');
});

test('every choice comes back from the address that it made', () => {
  for (const measure of ['runningAmps', 'lagS'])
    for (const direction of ['extend', 'retract'] as const)
      for (const scale of ['adjusted', 'measured'] as const) {
        const question = { measure, direction, scale };
        expect(trendQuestionOf(trendSearch(question))).toEqual(question);
      }
});

test('what the address asks for and is not there counts as not asked', () => {
  expect(trendQuestionOf('?direction=sideways&values=guessed&again')).toEqual(USUAL);
});
