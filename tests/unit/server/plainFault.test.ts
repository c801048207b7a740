import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { plainFault } from '../../../server/plainFault.ts';

/** As the validator puts it for programmers. */
const FOR_PROGRAMMERS = /invalid|expected|received|undefined|NaN|UUID|union/i;

describe('no word of the validator reaches a person', () => {
  test.each<[string, z.ZodType, unknown]>([
    ['an id that is none', z.uuid(), 'x'],
    ['an address of mail that is none', z.email(), 'x'],
    ['an address that is none', z.url(), 'x'],
    ['a time that is none', z.iso.datetime(), 'x'],
    ['a text of another form', z.string().regex(/^a$/), 'x'],
    ['a field that is missing', z.object({ name: z.string() }), {}],
    ['a number for text', z.string(), 1],
    ['null for text', z.string(), null],
    ['text for a number', z.number(), '1'],
    ['no number', z.number(), Number.NaN],
    ['a part of a whole', z.int(), 1.5],
    ['text for a list', z.array(z.string()), 'x'],
    ['text for a pair', z.tuple([z.string(), z.string()]), 'x'],
    ['a list for an object', z.object({}), []],
    ['a list for a record', z.record(z.string(), z.string()), []],
    ['a name that a record has not', z.record(z.string().max(1), z.string()), { long: 'x' }],
    ['a field too many', z.strictObject({}), { x: 1 }],
    ['neither of two', z.union([z.string(), z.number()]), true],
    ['none of several', z.enum(['a', 'b']), 'c'],
    ['not the only one', z.literal('a'), 'b'],
    ['too short a text', z.string().min(3), 'x'],
    ['too long a list', z.array(z.string()).max(0), ['x']],
    ['too few in a set', z.set(z.string()).min(1), new Set()],
    ['too large a number', z.number().max(3), 4],
    ['too small a bigint', z.bigint().min(3n), 2n],
    ['no multiple', z.number().multipleOf(5), 3],
    ['what a rule of ours refuses without a word', z.string().refine(() => false), 'x'],
    ['a file for text', z.instanceof(Date), 'x'],
  ])('of %s', (_, schema, value) => {
    const { error } = schema.safeParse(value, { error: plainFault });
    expect(error?.issues.length).toBeGreaterThan(0);
    for (const { message } of error?.issues ?? []) {
      expect(message).not.toMatch(FOR_PROGRAMMERS);
      expect(message).toMatch(/^[A-Z].*\.$/);
    }
  });

  test('and what a schema says itself goes before', () => {
    const schema = z.string().min(16, { error: 'must have at least 16 characters' });
    expect(schema.safeParse('x', { error: plainFault }).error?.issues[0].message).toBe(
      'must have at least 16 characters',
    );
  });
});
