import type { FastifySchemaCompiler } from 'fastify';
import { z } from 'zod';
import { type FieldFault, pointerPart } from '../../ingest/decodeError.ts';
import { plainFault } from '../plainFault.ts';
import { ProblemError } from '../problems.ts';

const MOST_FAULTS = 20;
const IN_PLAIN_WORDS = { error: plainFault };

/** What a schema found wrong. The error handler looks at where it was found before it answers. */
export class InvalidInput extends ProblemError {
  constructor(faults: readonly FieldFault[]) {
    super('invalid-field', detailOf(faults[0]), { errors: faults });
  }
}

/** What is at fault with the whole of a request has no pointer to stand before it. */
function detailOf(first: FieldFault | undefined): string {
  if (first === undefined) return 'The request does not fit.';
  return first.pointer === '' ? first.detail : `${first.pointer}: ${first.detail}`;
}

/** Checks requests with their zod schemas, and tells the fields at fault by JSON pointers. */
export const validateWithZod: FastifySchemaCompiler<z.ZodType> = ({ schema }) => {
  return (input: unknown) => {
    const result = z.safeParse(schema, input, IN_PLAIN_WORDS);
    if (result.success) return { value: result.data };
    return { error: new InvalidInput(faultsOf(result.error.issues).slice(0, MOST_FAULTS)) };
  };
};

/** The fields at fault by what a schema found, which was asked for plain words. */
export function faultsOf(issues: readonly z.core.$ZodIssue[]): FieldFault[] {
  return issues.flatMap((issue) => {
    if (issue.code !== 'unrecognized_keys')
      return [{ pointer: pointerOf(issue.path), detail: issue.message }];
    return issue.keys.map((key) => ({
      pointer: pointerOf([...issue.path, key]),
      detail: 'There is no such field here.',
    }));
  });
}

/** A JSON pointer (RFC 6901); the whole document is the empty one. */
export function pointerOf(path: readonly PropertyKey[]): string {
  return path.map((part) => `/${pointerPart(String(part).replaceAll(/\p{Surrogate}/gu, '\ufffd'))}`).join('');
}
