import type { Controller } from './room.ts';

/** A breaker that opens when its heater is warm and closes by itself once it has cooled: a common automotive one. */
export function beginBreaker(breaker: Controller['breaker']) {
  let warmth = 0;
  let open = false;
  return {
    isOpen: () => open,
    warm(amps: number, seconds: number): void {
      if (breaker === null) return;
      warmth += (seconds / breaker.warmingS) * ((amps / breaker.holdAmps) ** 2 - warmth);
      if (warmth > 1) open = true;
      else if (warmth < 0.55) open = false;
    },
  };
}
