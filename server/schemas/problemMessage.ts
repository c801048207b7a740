import type { Problem } from './common.ts';

/** A problem of RFC 9457 in a message: its members, and the whole with its own `type` once more. */
export type ProblemMessage = Omit<Problem, 'type'> & {
  readonly type: 'problem';
  readonly problem: Problem;
  readonly key?: string;
  /** The piece that the stroke goes on with. */
  readonly nextSeq?: number;
};

export function problemMessage(
  problem: Problem,
  about: Pick<ProblemMessage, 'key' | 'nextSeq'> = {},
): ProblemMessage {
  return { ...about, ...problem, type: 'problem', problem };
}
