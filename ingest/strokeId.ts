import { createHash } from 'node:crypto';
import { v7 } from 'uuid';

const LATEST_MS = 2 ** 48 - 1;
/** Where, of the bytes that the id takes, those begin which stand behind the first 31 of its free bits. */
const LATER_BYTES = 10;

/**
 * The id of a stroke: a UUID version 7 of its `startedAt`, its other bits from its key and then from its sender. It
 * follows from what was sent alone, so strokes of one instant come in the same order whichever of them arrived first,
 * and whoever sent them.
 */
export function strokeId(senderId: string, key: string, startedAtMs: number): string {
  const random = hashOf(key);
  hashOf(`${senderId}\n${key}`).copy(random, LATER_BYTES);
  return v7({ msecs: Math.min(LATEST_MS, Math.max(0, startedAtMs)), random });
}

function hashOf(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}
