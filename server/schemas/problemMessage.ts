import { z } from 'zod';
import { Problem } from './common.ts';

/** A problem of RFC 9457 in a message: its members, and the whole with its own `type` once more. */
export const ProblemMessage = z.object({
  ...Problem.shape,
  type: z.literal('problem'),
  problem: Problem,
  key: z.string().optional(),
  nextSeq: z.int().optional().describe('The piece that the stroke goes on with.'),
});
export type ProblemMessage = z.infer<typeof ProblemMessage>;

export function problemMessage(
  problem: Problem,
  about: Pick<ProblemMessage, 'key' | 'nextSeq'> = {},
): ProblemMessage {
  return { ...about, ...problem, type: 'problem', problem };
}
