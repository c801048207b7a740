import { describe, expect, test } from 'vitest';
import { CAUTIONS } from '../../../analysis/advice/cautions.ts';
import { compareWords } from '../../../dashboards/src/words/compare.ts';
import { noticesWords } from '../../../dashboards/src/words/notices.ts';
import { settingsWords } from '../../../dashboards/src/words/settings.ts';
import { strokeWords } from '../../../dashboards/src/words/stroke.ts';
import { uploadWords } from '../../../dashboards/src/words/upload.ts';
import { words } from '../../../dashboards/src/words.ts';
import { readingGrade, syllablesOf } from './readingGrade.ts';

/** Every sentence in a part of the words; what is put together is put together with samples. */
function sentencesIn(part: unknown): string[] {
  if (typeof part === 'string') return /[.!?]$/.test(part) ? [part] : [];
  // Samples fit every place of an owner's sentence: a number or a name.
  if (typeof part === 'function') return sentencesIn(part('3', 5, 0));
  if (typeof part !== 'object' || part === null) return [];
  return Object.values(part).flatMap(sentencesIn);
}

const { verdicts, coach, course, offline, room, services, warnings, problems, signIn, setUp } = words;

/** What an owner reads: the answer, the course, the warnings, recording work, and what goes wrong on the way. */
const FOR_OWNERS: Readonly<Record<string, unknown>> = {
  verdicts,
  coach,
  course,
  offline,
  room,
  services,
  settings: settingsWords,
  notices: noticesWords.notices,
  'how sure a warning is': warnings.sure,
  'what a warning likely is': warnings.likely,
  'what peaks likely are': warnings.likelyOfPattern,
  'when to stop': warnings.stopWhen,
  problems,
  signIn,
  setUp,
  promise: words.promise,
};

describe('the measure of reading', () => {
  test.each([
    ['room', 1],
    ['table', 2],
    ['measure', 2],
    ['stopped', 1],
    ['loaded', 2],
    ['gone', 1],
    ['fuses', 2],
    ['battery', 3],
    ['electrical', 4],
  ])('hears %s as %i', (word, syllables) => {
    expect(syllablesOf(word)).toBe(syllables);
  });

  test('is the formula of Kincaid and others, 1975', () => {
    // Ten words, one sentence, ten syllables; by hand 0.39 * 10 + 11.8 * 1 - 15.59.
    expect(readingGrade('The cat sat on the mat and had a nap.')).toBeCloseTo(0.11, 10);
    // Three words, nine syllables: 0.39 * 3 + 11.8 * 3 - 15.59.
    expect(readingGrade('Electrical batteries accumulate.')).toBeGreaterThan(20);
  });
});

describe('what owners read', () => {
  test.each(Object.entries(FOR_OWNERS))('is for grade 8 at most: %s', (_, part) => {
    const text = sentencesIn(part).join(' ');
    expect(text).not.toBe('');
    expect(readingGrade(text), text).toBeLessThanOrEqual(8);
  });

  test('warns them in words of grade 8 at most', () => {
    expect(readingGrade(Object.values(CAUTIONS).join(' '))).toBeLessThanOrEqual(8);
  });

  test('promises nothing', () => {
    expect(JSON.stringify(Object.values(FOR_OWNERS).flatMap(sentencesIn))).not.toMatch(
      /\bsafe(ly)?\b|all is well/i,
    );
  });
});

test('a room that borrows its normal tells from how many, or from others where that is not told', () => {
  expect([5, 1, null].map((rooms) => words.room.borrowed('40 %', rooms))).toEqual([
    '40 % of its normal is borrowed from 5 rooms of the same model.',
    '40 % of its normal is borrowed from 1 room of the same model.',
    '40 % of its normal is borrowed from others of the same model.',
  ]);
  expect(words.room.lends(null)).toMatch(/^Others of the same model will lend it/);
});

test('a room goes out and comes in, in every label and sentence, save where a record is put right', () => {
  const { directionChoices, ...others } = words;
  expect(Object.values(directionChoices)).toEqual(['Going out (extend)', 'Coming in (retract)']);
  // A line for a terminal speaks the service's own words.
  const said = JSON.stringify([others, strokeWords, uploadWords, compareWords], (key, value) =>
    key === 'curlLine' ? '' : typeof value === 'function' ? value('3', 'going out', 0) : value,
  );
  // Not as the name of a word, but within one.
  expect(said.match(/\b(extend|retract)(?!":)[^"]*/gi)).toBeNull();
});
