import { Random } from '../../../server/demo/simulator/random.ts';
import type { ToldEvent } from '../playFleet.ts';
import type { Condition } from './condition.ts';
import { driveStroke } from './driveStroke.ts';
import type { WormMember } from './fleet.ts';
import type { LivedStroke } from './life.ts';
import { recordStroke } from './recordStroke.ts';

/** A winding loses the warmth of a stroke in so long. */
const COOLING_MS = 20 * 60_000;

/** Plays a room's life, stroke by stroke. */
export function* wormHistory({ seed, room, life, fault }: WormMember): Generator<ToldEvent> {
  const random = new Random(seed ^ 0x5eed);
  let warmC = 0;
  let lastMs = 0;
  for (const [index, lived] of life.entries()) {
    if (lived.service !== null) yield { type: 'service', ...lived.service };
    if (fault?.service?.beforeStroke === index) {
      const { kind, side } = fault.service;
      yield { type: 'service', atMs: Math.round(lived.atMs - 0.05 * (lived.atMs - lastMs)), kind, side };
    }
    const condition = soundCondition(lived, warmC * Math.exp(-(lived.atMs - lastMs) / COOLING_MS));
    if (fault !== null && index >= fault.startsStroke) fault.change(condition, index, lived, random);
    const driven = driveStroke(room, lived.direction, condition);
    warmC = driven.warmC;
    lastMs = lived.atMs;
    yield {
      type: 'stroke',
      index,
      broken: lived.from > 0 || lived.to < 1,
      stroke: recordStroke(room, lived, condition, driven, random),
    };
  }
}

function soundCondition(lived: LivedStroke, warmC: number): Condition {
  return {
    sides: lived.rubbing.map((rubbing, at) => ({
      rubbing,
      pull: lived.pull[at],
      bumps: [],
      lost: [],
      loose: false,
      addedWayMetres: 0,
      grip: 1,
      magnets: 1,
      winding: 1,
      reading: {
        gain: 1,
        zeroAmps: lived.zeroAmps[at],
        addedNoiseAmps: 0,
        clipAmps: Number.POSITIVE_INFINITY,
        missedShare: 0,
        off: false,
      },
    })),
    openVolts: lived.openVolts,
    addedOhm: lived.addedOhm,
    ambientC: lived.ambientC,
    warmC,
    from: lived.from,
    to: lived.to,
    stalls: lived.to === 1,
    holdS: lived.holdS,
    pause: lived.pause,
    clock: 1,
  };
}
