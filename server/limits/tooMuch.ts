import { ProblemError } from '../problems.ts';

const AGAIN_AFTER_S = '10';

/** The 429 problem of whoever sends more at once than can be taken. */
export function tooMuchAtOnce(): ProblemError {
  return new ProblemError('too-many-requests', 'This is too much at once. Send again after the others.', {
    headers: { 'retry-after': AGAIN_AFTER_S },
  });
}
