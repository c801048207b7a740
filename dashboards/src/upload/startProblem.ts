import type { StrokesPreview } from '../api/types.ts';
import { words } from '../words.ts';

/** What is wrong with when the recording began, as far as the service said that something is. */
export function startProblem({ problems, startedAt }: StrokesPreview): string | null {
  const say = words.upload;
  if (!problems.some(({ pointer }) => pointer === '/startedAt')) return null;
  if (startedAt === null) return say.startMissing;
  return Date.parse(startedAt) > Date.now() ? say.startFuture : say.startLongAgo;
}
