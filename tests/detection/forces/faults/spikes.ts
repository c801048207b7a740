import type { Random } from '../../../../server/demo/simulator/random.ts';
import type { ForceShape } from '../condition.ts';
import type { ForcesRoom } from '../room.ts';
import { anySide, type ForcesFaultKind, forcesFault, leastAmps, SUITS_ALL, sideName } from './fault.ts';

interface Bump {
  readonly side: number;
  /** How much more force at its height, as a part. */
  readonly height: number;
  readonly width: number;
}

/** A bump that stands above the noise and lasts for some samples; a motor's own inertia takes some of its height. */
function drawBump(room: ForcesRoom, random: Random): Bump {
  const side = anySide(room, random);
  const noise = room.clamps[side].whiteAmps / leastAmps(room, side);
  const lastsS = Math.max(random.uniform(0.12, 0.3), 2.5 / room.rateHz);
  return {
    side,
    height: Math.max(random.uniform(0.5, 1.3), 8 * noise),
    width: Math.min(0.02, lastsS / room.travelS),
  };
}

function shapeOf({ side, height, width }: Bump, places: readonly number[]): ForceShape {
  return (own, position) => {
    if (own !== side) return 1;
    let more = 0;
    for (const place of places) more += Math.exp(-0.5 * ((position - place) / (width / 2)) ** 2);
    return 1 + height * more;
  };
}

const samePlace: ForcesFaultKind = {
  name: 'spike-same-place',
  leastSides: 1,
  suits: SUITS_ALL,
  draw(room, random, onset) {
    const bump = drawBump(room, random);
    const position = random.uniform(0.12, 0.88);
    const shape = shapeOf(bump, [position]);
    const side = sideName(room, bump.side);
    const told = {
      kind: 'stall-spike',
      pattern: 'same-place',
      side,
      position,
      severity: bump.height,
    } as const;
    return forcesFault('spike-same-place', onset, told, (condition) => ({
      ...condition,
      shapes: [...condition.shapes, shape],
    }));
  },
};

const perTurn: ForcesFaultKind = {
  name: 'spike-per-turn',
  leastSides: 1,
  suits: ({ turn }) => turn > 0.08,
  draw(room, random, onset) {
    const bump = drawBump(room, random);
    const first = random.uniform(0, room.turn);
    const places = Array.from({ length: Math.ceil(1 / room.turn) }, (_, turn) => first + turn * room.turn);
    const shape = shapeOf(bump, places);
    const side = sideName(room, bump.side);
    const told = { kind: 'stall-spike', pattern: 'once-per-turn', side, severity: bump.height } as const;
    return forcesFault('spike-per-turn', onset, told, (condition) => ({
      ...condition,
      shapes: [...condition.shapes, shape],
    }));
  },
};

const scattered: ForcesFaultKind = {
  name: 'spike-scattered',
  leastSides: 1,
  suits: SUITS_ALL,
  draw(room, random, onset) {
    const bump = drawBump(room, random);
    const side = sideName(room, bump.side);
    const told = { kind: 'stall-spike', pattern: 'scattered', side, severity: bump.height } as const;
    return forcesFault('spike-scattered', onset, told, (condition, _, own) => {
      const places = Array.from({ length: own.integer(1, 4) }, () => own.uniform(0.1, 0.9));
      return { ...condition, shapes: [...condition.shapes, shapeOf(bump, places)] };
    });
  },
};

export const SPIKE_FAULTS = [samePlace, perTurn, scattered];
