import type { z } from 'zod';

/**
 * What is wrong with a field, in a sentence that a person can read who never saw the program. Where the schema has words
 * of its own, those come first; the validator's own reach nobody.
 */
export function plainFault(issue: z.core.$ZodRawIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      if (issue.input === undefined) return 'Is missing.';
      return `Must be ${KINDS[issue.expected] ?? 'of another kind'}.`;
    case 'too_small':
      return atLeast(issue.origin, Number(issue.minimum), issue.inclusive !== false);
    case 'too_big':
      return atMost(issue.origin, Number(issue.maximum), issue.inclusive !== false);
    case 'invalid_format':
      return `Must be ${FORMS[issue.format] ?? 'in the form that is asked for'}.`;
    case 'invalid_value':
      return `Must be ${issue.values.length === 1 ? '' : 'one of: '}${issue.values.join(', ')}.`;
    case 'not_multiple_of':
      return `Must be a multiple of ${issue.divisor}.`;
    case 'unrecognized_keys':
      return 'Has a field that there is not.';
    case 'invalid_union':
      return 'Is none of the forms that are taken here.';
    case 'invalid_key':
      return 'Has a name that is not taken here.';
    default:
      return 'Is not what is taken here.';
  }
}

const KINDS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'an object',
  record: 'an object',
  date: 'a time',
  null: 'null',
};

const FORMS: Readonly<Record<string, string>> = {
  uuid: 'an id, such as 0197b0c8-26f4-7cc1-8000-3b2a1f0e9d4c',
  email: 'an e-mail address, such as name@example.com',
  url: 'an address, such as https://example.com/',
  datetime: 'a time, such as 2026-05-02T16:20:11Z',
};

const counted = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

function atLeast(origin: string, least: number, isTaken: boolean): string {
  if (origin === 'number' || origin === 'int')
    return `Must be ${isTaken ? 'at least' : 'more than'} ${least}.`;
  if (origin === 'string')
    return least === 1 ? 'Must not be empty.' : `Must have at least ${counted(least, 'character')}.`;
  return `Must have at least ${counted(least, 'item')}.`;
}

function atMost(origin: string, most: number, isTaken: boolean): string {
  if (origin === 'number' || origin === 'int') return `Must be ${isTaken ? 'at most' : 'less than'} ${most}.`;
  if (origin === 'string') return `Must have at most ${counted(most, 'character')}.`;
  return `Must have at most ${counted(most, 'item')}.`;
}
