import { setTimeout as wait } from 'node:timers/promises';

const FIRST_MS = 1000;

/**
 * Waits between tries: exponential with full jitter (M. Brooker, "Exponential Backoff And Jitter", 2015), and never
 * shorter than the service asks for.
 */
export class BackOff {
  readonly #mostMs: number;
  readonly #stopping: AbortSignal;
  #tries = 0;

  constructor(mostMs: number, stopping: AbortSignal) {
    this.#mostMs = mostMs;
    this.#stopping = stopping;
  }

  /** Something went well: the next trouble begins with a short wait. */
  reset(): void {
    this.#tries = 0;
  }

  /** Rejects when the logger is told to stop. */
  async wait(retryAfterS = 0): Promise<void> {
    const most = Math.min(this.#mostMs, FIRST_MS * 2 ** this.#tries++);
    await wait(Math.max(1000 * retryAfterS, Math.random() * most), undefined, { signal: this.#stopping });
  }
}

/** The seconds of a `Retry-After` (RFC 9110, section 10.2.3), which may also be a date. */
export function retryAfterS(header: string | null): number {
  if (header === null) return 0;
  const seconds = /^\d+$/.test(header) ? Number(header) : (Date.parse(header) - Date.now()) / 1000;
  return Number.isFinite(seconds) ? Math.max(0, seconds) : 0;
}
