import { createHash } from 'node:crypto';
import { stringify } from 'uuid';
import type { Drive } from '../../analysis/trace.ts';

/** Rooms that may lend to each other, as ids of their own kind: equal where they are alike. */
export interface Peers {
  /** Of one coach model, drive and sides. */
  readonly peers: string;
  /** Those of them that have the same name too. */
  readonly namesakes: string;
}

interface RoomOfModel {
  readonly model: string | null;
  readonly drive: Drive;
  readonly sides: readonly string[];
  readonly name: string;
}

/** Models and names are compared without their case and the space around them. Null without a model. */
export function peersOf({ model, drive, sides, name }: RoomOfModel): Peers | null {
  const ofModel = fold(model ?? '');
  if (ofModel === '') return null;
  // What the only side is called says nothing; of several, each lends to the one in its place.
  const alike = [ofModel, drive, sides.length === 1 ? ['only'] : sides.map(fold)];
  return { peers: digest(alike), namesakes: digest([...alike, fold(name)]) };
}

/** Of two models, or two rooms. */
export function isSameName(one: string | null, other: string | null): boolean {
  return fold(one ?? '') === fold(other ?? '');
}

function fold(text: string): string {
  return text.normalize('NFC').trim().toLowerCase();
}

/** Of a fixed length, whatever people call things, and written as a UUID (RFC 9562, section 5.8). */
function digest(parts: unknown): string {
  const bytes = createHash('sha256').update(JSON.stringify(parts)).digest().subarray(0, 16);
  bytes[6] = 0x80 | (bytes[6] & 0x0f);
  bytes[8] = 0x80 | (bytes[8] & 0x3f);
  return stringify(bytes);
}
