import { createCipheriv, createDecipheriv, createHash, hkdfSync, randomBytes } from 'node:crypto';

const NONCE_BYTES = 12;
const TAG_BYTES = 16;

/**
 * An answer as it is kept beside its Idempotency-Key. It may hold a token, which must not lie readable in the database:
 * it is sealed (AES-256-GCM) with a secret drawn from the key, of which only a hash is kept.
 */
export function sealAnswer(answer: unknown, key: string): Buffer {
  const nonce = randomBytes(NONCE_BYTES);
  const cipher = createCipheriv('aes-256-gcm', secretFrom(key), nonce);
  const sealed = Buffer.concat([cipher.update(JSON.stringify(answer), 'utf8'), cipher.final()]);
  return Buffer.concat([nonce, cipher.getAuthTag(), sealed]);
}

export function openAnswer(sealed: Buffer, key: string): unknown {
  const nonce = sealed.subarray(0, NONCE_BYTES);
  const decipher = createDecipheriv('aes-256-gcm', secretFrom(key), nonce);
  decipher.setAuthTag(sealed.subarray(NONCE_BYTES, NONCE_BYTES + TAG_BYTES));
  const text = Buffer.concat([decipher.update(sealed.subarray(NONCE_BYTES + TAG_BYTES)), decipher.final()]);
  return JSON.parse(text.toString('utf8'));
}

export function hashKey(key: string): Buffer {
  return createHash('sha256').update(`slideload idempotency key\n${key}`).digest();
}

function secretFrom(key: string): Buffer {
  return Buffer.from(hkdfSync('sha256', key, 'slideload', 'idempotent answer', 32));
}
