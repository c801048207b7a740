import { createHash, randomBytes } from 'node:crypto';
import { parse as uuidBytes } from 'uuid';
import { ID_BYTES, idOfBytes } from './idOfBytes.ts';

const SECRET_BYTES = 32;

const PREFIX = {
  person: 'slp_',
  logger: 'sll_',
  invitation: 'sli_',
  /** A person's own, for its scripts. */
  script: 'slk_',
  /** Sets a forgotten password anew. */
  reset: 'slr_',
} as const;
type TokenKind = keyof typeof PREFIX;
// The keys of the table above are the kinds.
const KINDS = Object.keys(PREFIX) as TokenKind[];

export interface Token {
  readonly kind: TokenKind;
  readonly accountId: string;
  /** SHA-256 of the token: all that is stored. The token itself has 256 random bits, so a slow hash gains nothing. */
  readonly hash: Buffer;
}

/**
 * A new token: 32 random bytes behind the account's id, so that it is looked up by the account first, as every table
 * is keyed.
 */
export function newToken(kind: TokenKind, accountId: string): { text: string; hash: Buffer } {
  const bytes = Buffer.concat([uuidBytes(accountId), randomBytes(SECRET_BYTES)]);
  const text = PREFIX[kind] + bytes.toString('base64url');
  return { text, hash: hashOf(text) };
}

/** Takes a token apart; null when it is none. */
export function readToken(text: string): Token | null {
  const kind = KINDS.find((each) => text.startsWith(PREFIX[each]));
  if (kind === undefined) return null;
  const bytes = Buffer.from(text.slice(PREFIX[kind].length), 'base64url');
  if (bytes.length !== ID_BYTES + SECRET_BYTES) return null;
  // Base64 can be written in several ways: only the one that was handed out counts.
  if (PREFIX[kind] + bytes.toString('base64url') !== text) return null;
  return { kind, accountId: idOfBytes(bytes.subarray(0, ID_BYTES)), hash: hashOf(text) };
}

function hashOf(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}
