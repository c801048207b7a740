import { stat } from 'node:fs/promises';
import { ifThere } from '../ifThere.ts';
import { OperatorError } from '../operatorError.ts';

/** What somebody kept in a file is not lost to a name that was given twice. */
export async function refuseWritingOver(file: string): Promise<void> {
  if ((await ifThere(stat(file))) !== null)
    throw new OperatorError(`${file} is there already: name another file.`);
}
