import type { StrokesPreview } from '../api/types.ts';
import { uploadWords } from '../words/upload.ts';

/** What is wrong with when the recording began, as far as the service said that something is. */
export function startProblem({ problems, startedAt }: StrokesPreview): string | null {
  const say = uploadWords;
  if (!problems.some(({ pointer }) => pointer === '/startedAt')) return null;
  if (startedAt === null) return say.startMissing;
  return Date.parse(startedAt) > Date.now() ? say.startFuture : say.startLongAgo;
}
