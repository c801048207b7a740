import type { z } from 'zod';

/**
 * What is wrong with a field, in a sentence that a person can read who never saw the program. Undefined where the schema
 * has words of its own, or the validator's are plain enough.
 */
export function plainFault(issue: z.core.$ZodRawIssue): string | undefined {
  switch (issue.code) {
    case 'invalid_type':
      if (issue.input === undefined) return 'Is missing.';
      return KINDS[issue.expected] === undefined ? undefined : `Must be ${KINDS[issue.expected]}.`;
    case 'too_small':
      return atLeast(issue.origin, Number(issue.minimum), issue.inclusive !== false);
    case 'too_big':
      return atMost(issue.origin, Number(issue.maximum), issue.inclusive !== false);
    case 'invalid_format':
      return issue.format === 'email' ? 'Must be an e-mail address, such as name@example.com.' : undefined;
    case 'invalid_value':
      return `Must be ${issue.values.length === 1 ? '' : 'one of: '}${issue.values.join(', ')}.`;
    default:
      return undefined;
  }
}

const KINDS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
};

const counted = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

function atLeast(origin: string, least: number, isTaken: boolean): string | undefined {
  if (origin === 'number' || origin === 'int')
    return `Must be ${isTaken ? 'at least' : 'more than'} ${least}.`;
  if (origin === 'string')
    return least === 1 ? 'Must not be empty.' : `Must have at least ${counted(least, 'character')}.`;
  return origin === 'array' ? `Must have at least ${counted(least, 'item')}.` : undefined;
}

function atMost(origin: string, most: number, isTaken: boolean): string | undefined {
  if (origin === 'number' || origin === 'int') return `Must be ${isTaken ? 'at most' : 'less than'} ${most}.`;
  if (origin === 'string') return `Must have at most ${counted(most, 'character')}.`;
  return origin === 'array' ? `Must have at most ${counted(most, 'item')}.` : undefined;
}
