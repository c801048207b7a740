import type { WarningKind } from '../warning.ts';

/** The usual cautions: they stand wherever looking at, touching, loosening or lubricating anything is suggested. */
export const CAUTIONS = {
  travel:
    'Keep everyone, and every hand, out of the travel of the room, inside and outside, while it can move.',
  weight: 'Support the room and take the weight off before you loosen anything that carries or drives it.',
  supply:
    'Disconnect the supply before you touch motors or wiring, and know what the brake does when a motor is unplugged.',
  fuse: 'Never bypass a fuse or breaker, and never fit a larger one: wires at forty amperes burn.',
  tow: 'Secure the room for travel before the vehicle is moved.',
  manual:
    "The maker's manual and local codes come first; structural and electrical repair is work for a licensed technician.",
} as const;

/** Order: people first, then the machine. */
export function cautionsFor(kind: WarningKind): string[] {
  const { travel, weight, supply, fuse, tow, manual } = CAUTIONS;
  if (kind === 'weak-supply') return [travel, supply, fuse, manual];
  if (kind === 'sensor-doubt') return [travel, supply, manual];
  return [travel, weight, supply, fuse, tow, manual];
}
