import { createHmac, randomBytes } from 'node:crypto';

const SECRET_BYTES = 32;
const PREFIX = 'whsec_';

/** A new key for the signatures of one webhook. */
export function newSecret(): Buffer {
  return randomBytes(SECRET_BYTES);
}

/** The key as whoever checks signatures is given it. */
export function secretText(secret: Buffer): string {
  return PREFIX + secret.toString('base64');
}

/**
 * The headers of one attempt to deliver `body` under `id`, signed. By the Standard Webhooks specification 1.0.0:
 * HMAC-SHA256 over id, whole seconds since 1970 and body, joined by full stops.
 */
export function signedHeaders(id: string, at: Date, body: string, secret: Buffer): Record<string, string> {
  const timestamp = String(Math.floor(at.getTime() / 1000));
  const signature = createHmac('sha256', secret).update(`${id}.${timestamp}.${body}`).digest('base64');
  return { 'webhook-id': id, 'webhook-timestamp': timestamp, 'webhook-signature': `v1,${signature}` };
}
