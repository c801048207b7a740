import type { Condition } from './condition.ts';
import type { LivedStroke } from './life.ts';
import type { CableRoom } from './room.ts';

/** What a stroke of a sound room meets. */
export function soundCondition(room: CableRoom, lived: LivedStroke, warmC: readonly number[]): Condition {
  const { stay } = lived;
  return {
    sides: room.sides.map((_, at) => ({
      rolling:
        lived.rolling[at] *
        (1 + (at === 0 ? stay.pitchPart : -stay.pitchPart) + Math.abs(stay.pitchPart) / 2),
      wiper: 1,
      grease: lived.grease,
      bumps: [],
      stretches: [],
      turnBump: null,
      lost: [],
      ohm: 1,
      magnets: 1,
      reading: {
        gain: 1,
        zeroAmps: lived.zeroAmps,
        noiseAmps: room.logger.noiseAmps,
        clipAmps: Number.POSITIVE_INFINITY,
        missedPart: 0,
        off: false,
      },
    })),
    openVolts: stay.openVolts,
    rippleVolts: stay.rippleVolts,
    // A cold battery gives less.
    batteryOhm: 1 + 0.012 * Math.max(0, 20 - lived.ambientC),
    contactOhm: lived.contactOhm,
    ambientC: lived.ambientC,
    warmC,
    tiltRadians: stay.tiltRadians,
    load: stay.load,
    stayDays: lived.stayDays,
    rollerFlat: lived.rollerFlat,
    topper: 1,
    from: lived.from,
    to: lived.to,
    reversed: lived.reversed,
    holdS: lived.holdS,
    pauses: lived.pauses,
    blockedAt: null,
    slips: [],
    givesUpS: null,
    clock: 1,
  };
}
