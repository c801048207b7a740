import type { FastifyRateLimitStore } from '@fastify/rate-limit';
import { BoundedMap } from '../boundedMap.ts';

/** Senders whose counts are kept; beyond them whoever was counted longest ago is forgotten. */
const MOST_KEYS = 20_000;

interface Window {
  count: number;
  readonly beganMs: number;
}

/**
 * Counts for `@fastify/rate-limit`, in windows of a clock that only goes forward. The library's own store goes by the time of
 * day: a clock that is set back by an hour would keep whoever was refused out for an hour.
 */
export class SteadyStore implements FastifyRateLimitStore {
  readonly #windows = new BoundedMap<string, Window>(MOST_KEYS);

  incr(
    key: string,
    tell: (error: Error | null, result?: { current: number; ttl: number }) => void,
    windowMs = 60_000,
  ): void {
    const nowMs = performance.now();
    const before = this.#windows.get(key);
    const window =
      before === undefined || nowMs >= before.beganMs + windowMs ? { count: 0, beganMs: nowMs } : before;
    window.count++;
    if (window !== before) this.#windows.set(key, window);
    tell(null, { current: window.count, ttl: Math.ceil(windowMs - (nowMs - window.beganMs)) });
  }

  /** What was counted, without counting. */
  read(
    key: string,
    tell: (error: Error | null, result?: { current: number; ttl: number }) => void,
    windowMs = 60_000,
  ): void {
    const nowMs = performance.now();
    const window = this.#windows.get(key);
    const leftMs = window === undefined ? 0 : window.beganMs + windowMs - nowMs;
    if (window === undefined || leftMs <= 0) tell(null, { current: 0, ttl: 0 });
    else tell(null, { current: window.count, ttl: Math.ceil(leftMs) });
  }

  child(): SteadyStore {
    return new SteadyStore();
  }
}
