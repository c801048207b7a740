import type { FieldFault } from '../../ingest/decodeError.ts';
import type { Ending } from '../../ingest/live/finish.ts';
import type { LiveHeader } from '../../ingest/live/header.ts';
import type { Beginning } from '../../ingest/live/liveStroke.ts';
import { ProblemError, type ProblemName } from '../problems.ts';
import type { ProblemMessage } from '../schemas/problemMessage.ts';

type About = Pick<ProblemMessage, 'key' | 'nextSeq'>;

/** A problem of one stroke on a link. */
export class LinkProblem extends ProblemError {
  readonly about: About;

  constructor(problem: ProblemName, detail: string, about: About, errors: readonly FieldFault[] = []) {
    super(problem, detail, { errors });
    this.about = about;
  }
}

/** Another link of the same logger began the same stroke later. */
export class TakenOver extends LinkProblem {
  constructor(key: string) {
    super('conflict', 'This stroke was begun again on another link, which has it now.', { key });
  }
}

export function beginningProblem(
  refused: Exclude<Beginning, { readonly strokeId: string }>,
  header: LiveHeader,
): LinkProblem {
  const { key } = header;
  switch (refused.outcome) {
    case 'unknown-room':
      return atFault(key, [{ pointer: '/roomId', detail: 'There is no such room.' }]);
    case 'unknown-sides':
      return unknownSides(header, refused.sides);
    case 'differs':
      return new LinkProblem('conflict', 'A stroke of this key was begun before, with another beginning.', {
        key,
      });
    case 'too-many':
      return new LinkProblem('too-many-requests', 'Too many unfinished strokes: end some of them first.', {
        key,
      });
  }
}

export function endingProblem(
  refused: Extract<Ending, { readonly outcome: 'unknown-sides' }>,
  header: LiveHeader,
): LinkProblem {
  return unknownSides(header, refused.sides);
}

function unknownSides(header: LiveHeader, unknown: readonly string[]): LinkProblem {
  const faults = header.sides.flatMap(({ side }, i) =>
    unknown.includes(side) ? [{ pointer: `/sides/${i}/side`, detail: 'The room has no such side.' }] : [],
  );
  return atFault(header.key, faults);
}

function atFault(key: string, faults: readonly FieldFault[]): LinkProblem {
  return new LinkProblem(
    'invalid-field',
    faults[0]?.detail ?? 'The stroke cannot be taken.',
    { key },
    faults,
  );
}
