import { expect, test } from 'vitest';
import { checkJsonShape } from '../../../ingest/json/shape.ts';

const check = (text: string) => () => checkJsonShape(Buffer.from(text));

test.each([
  ['twelve deep', '['.repeat(12) + ']'.repeat(12)],
  ['brackets in a text', JSON.stringify('[{'.repeat(100_000))],
  ['brackets after an escaped quotation mark', JSON.stringify(`"${'['.repeat(100)}`)],
  ['a text that ends in a backslash', JSON.stringify({ a: '\\', b: [] })],
  ['many arrays beside each other', `[${'[1.5,-2e3],'.repeat(19_000)}1]`],
  ['nothing', ''],
  // Whether it is JSON at all is another's to say.
  ['a text without an end', '["[[[[[[[[[[[[['],
  ['too many ends', ']]]]]'],
])('%s passes', (_, text) => {
  expect(check(text)).not.toThrow();
});

test.each([
  ['thirteen deep', '['.repeat(13) + ']'.repeat(13), 'Nested more than 12 deep.'],
  ['sixteen million deep', '['.repeat(16_000_000), 'Nested more than 12 deep.'],
  ['objects in one another', '{"a":'.repeat(13), 'Nested more than 12 deep.'],
  ['depth behind a text', `["\\"]",${'['.repeat(12)}`, 'Nested more than 12 deep.'],
  ['20,001 objects', `[${'{},'.repeat(20_000)}0]`, 'More than 20000 objects and arrays.'],
  ['200,001 names', `{${'"a":1,'.repeat(200_001)}}`, 'More names than fields could have.'],
])('%s is refused', (_, text, why) => {
  expect(check(text)).toThrow(why);
});
