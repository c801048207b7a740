import { createHash } from 'node:crypto';
import { v7 } from 'uuid';

const LATEST_MS = 2 ** 48 - 1;

/**
 * The id of a stroke: a UUID version 7 of its `startedAt`, its other bits from its sender and key. It follows from
 * what was sent alone, so strokes of one instant come in the same order whichever of them arrived first.
 */
export function strokeId(senderId: string, key: string, startedAtMs: number): string {
  const random = createHash('sha256').update(`${senderId}\n${key}`).digest();
  return v7({ msecs: Math.min(LATEST_MS, Math.max(0, startedAtMs)), random });
}
