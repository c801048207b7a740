import type { Readable } from 'node:stream';
import { codeOf } from '../../ingest/errorCode.ts';
import { ProblemError } from '../problems.ts';
import type { HeldBody } from './bodyMemory.ts';
import type { Limits } from './limits.ts';
import { Pace } from './pace.ts';

/**
 * The bytes of a body, decompressed. Rejects with the 413 problem for more than `mostBytes`, 408 for a sender that is
 * too slow, 429 where there is no room for them, and 400 for a body that breaks off or is no gzip.
 */
export function readBody(
  payload: Readable,
  mostBytes: number,
  held: HeldBody,
  limits: Limits,
): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = [];
    const settle = (error: unknown): void => {
      pace.stop();
      payload.off('data', take).off('end', whole).off('error', broken);
      if (error === null) {
        resolve(Buffer.concat(chunks));
        return;
      }
      reject(error);
    };
    const take = (chunk: Buffer): void => {
      const mayGoOn = held.add(chunk.length);
      if (held.bytes > mostBytes) {
        settle(bodyTooLarge());
        return;
      }
      chunks.push(chunk);
      pace.received(chunk.length);
      if (mayGoOn === null) return;
      payload.pause();
      pace.pause();
      mayGoOn.then(() => {
        pace.resume();
        payload.resume();
      }, settle);
    };
    const whole = (): void => settle(null);
    const broken = (error: Error): void => settle(brokenBody(error));
    const pace = new Pace(limits, () => settle(bodyTooSlow()));
    payload.on('data', take).on('end', whole).on('error', broken).resume();
  });
}

export function bodyTooLarge(): ProblemError {
  return new ProblemError('body-too-large', 'The body is larger than this address takes.');
}

function bodyTooSlow(): ProblemError {
  return new ProblemError('request-timeout', 'The body came too slowly.');
}

/** What decompressing it found out, by the codes of zlib, or that its sender is gone. */
function brokenBody(error: Error): ProblemError {
  const isNoGzip = codeOf(error).startsWith('Z_');
  const detail = isNoGzip ? 'The body is not whole and valid gzip.' : 'The body broke off.';
  return new ProblemError('malformed-request', detail, { cause: error });
}
