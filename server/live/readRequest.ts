import { plainFault } from '../plainFault.ts';
import { ProblemError } from '../problems.ts';
import { faultsOf } from '../requests/validation.ts';
import { LiveRequest } from '../schemas/live.ts';

/** Every message of a person is short: a type and an id or a token. */
const LONGEST_MESSAGE_BYTES = 4096;

/** Reads one message. Throws the problem of one that is none. */
export function readRequest(bytes: Buffer, isBinary: boolean): LiveRequest {
  if (isBinary) throw new ProblemError('unsupported-media-type', 'Send JSON as text.');
  if (bytes.length > LONGEST_MESSAGE_BYTES)
    throw new ProblemError('body-too-large', `A message may have ${LONGEST_MESSAGE_BYTES} bytes.`);
  const read = LiveRequest.safeParse(parse(bytes), { error: plainFault });
  if (read.success) return read.data;
  const errors = faultsOf(read.error.issues);
  throw new ProblemError('invalid-field', 'The message is not one of those taken here.', { errors });
}

function parse(bytes: Buffer): unknown {
  try {
    return JSON.parse(bytes.toString('utf8'));
  } catch (cause) {
    throw new ProblemError('malformed-request', 'The message is not JSON.', { cause });
  }
}
