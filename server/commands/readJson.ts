import { z } from 'zod';
import { OperatorError } from '../operatorError.ts';
import { plainFault } from '../plainFault.ts';

/** What to say of an entry that is no JSON, or is not as it must be. */
interface Complaints {
  readonly noJson: string;
  readonly unfit: string;
}

/** An entry that was read whole, as `schema` has it. */
export function readJson<Schema extends z.ZodType>(
  schema: Schema,
  bytes: Buffer,
  { noJson, unfit }: Complaints,
): z.infer<Schema> {
  let value: unknown;
  try {
    value = JSON.parse(bytes.toString());
  } catch (cause) {
    throw new OperatorError(noJson, { cause });
  }
  const read = schema.safeParse(value, { error: plainFault });
  if (read.success) return read.data;
  throw new OperatorError(`${unfit}: ${z.prettifyError(read.error)}`);
}
