import type { Limits } from './limits.ts';

/**
 * Watches how fast a body comes: it has a time whatever its size, and each byte buys as much more as the slowest
 * allowed line needs for it, though never so much that it may stand still for long. Time in which we do not read does
 * not count. Goes by a clock that is never set back.
 */
export class Pace {
  readonly #limits: Limits;
  readonly #tooSlow: () => void;
  #deadlineMs: number;
  #latestMs: number;
  #pausedAtMs = 0;
  #timer: NodeJS.Timeout;

  constructor(limits: Limits, tooSlow: () => void) {
    const nowMs = performance.now();
    this.#limits = limits;
    this.#tooSlow = tooSlow;
    this.#deadlineMs = nowMs + limits.bodyWithinMs;
    this.#latestMs = nowMs + limits.bodyAtMostMs;
    this.#timer = this.#look();
  }

  received(bytes: number): void {
    const bought = this.#deadlineMs + (bytes / this.#limits.bodyBytesPerS) * 1000;
    this.#deadlineMs = Math.min(bought, performance.now() + this.#limits.bodyStallMs);
  }

  pause(): void {
    clearTimeout(this.#timer);
    this.#pausedAtMs = performance.now();
  }

  resume(): void {
    const pausedMs = performance.now() - this.#pausedAtMs;
    this.#deadlineMs += pausedMs;
    this.#latestMs += pausedMs;
    this.#timer = this.#look();
  }

  stop(): void {
    clearTimeout(this.#timer);
  }

  /** At the deadline as it is known now, or when a stall would be over; bytes that came until then have moved it. */
  #look(): NodeJS.Timeout {
    const left = () => Math.min(this.#deadlineMs, this.#latestMs) - performance.now();
    return setTimeout(
      () => {
        if (left() <= 0) this.#tooSlow();
        else this.#timer = this.#look();
      },
      Math.max(1, Math.ceil(Math.min(left(), this.#limits.bodyStallMs))),
    );
  }
}
