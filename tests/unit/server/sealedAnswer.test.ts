import { expect, test } from 'vitest';
import { hashKey, openAnswer, sealAnswer } from '../../../server/requests/sealedAnswer.ts';

const ANSWER = { token: 'never to be read in the database', id: '0199' };

test('an answer is opened by the key that it was sealed with, and by no other', () => {
  const sealed = sealAnswer(ANSWER, 'one');
  expect(openAnswer(sealed, 'one')).toEqual(ANSWER);
  expect(() => openAnswer(sealed, 'another')).toThrow();
});

test('what is kept holds nothing that can be read, is another each time, and is refused once it was changed', () => {
  const sealed = sealAnswer(ANSWER, 'one');
  expect(sealed.toString('latin1')).not.toContain('token');
  expect(sealAnswer(ANSWER, 'one').equals(sealed)).toBe(false);
  for (const place of [0, 12, sealed.length - 1]) {
    const changed = Buffer.from(sealed);
    changed[place] ^= 1;
    expect(() => openAnswer(changed, 'one'), String(place)).toThrow();
  }
});

test('the hash of a key is not what its answer is sealed with', () => {
  expect(hashKey('one')).toHaveLength(32);
  expect(hashKey('one').equals(hashKey('other'))).toBe(false);
  expect(() => openAnswer(sealAnswer(ANSWER, 'one'), hashKey('one').toString('utf8'))).toThrow();
});
