import type { ServiceEvent, StrokeEvent } from '../../../../analysis/history.ts';
import {
  type DoneAnalysis,
  PROFILE_BINS,
  type SideMeasures,
  type Spike,
} from '../../../../analysis/measures.ts';
import type { Direction, RoomDescription, ServiceKind } from '../../../../analysis/trace.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';

/** What one measured stroke of a room is to say; factors are against the room's own level. */
export interface Told {
  readonly factors: readonly number[];
  readonly spikes: readonly (readonly Spike[])[];
  readonly volts: number | null;
  readonly ambientC: number | null;
  readonly excluded: boolean;
  readonly unusable: boolean;
  readonly lagS: number;
  /** Places of the profile, 0 to 1, where something is added or taken away; a part of the level, of all sides or of these places. */
  readonly bump: {
    readonly from: number;
    readonly to: number;
    readonly part: number;
    readonly places?: readonly number[];
  } | null;
}

const PLAIN: Told = {
  factors: [1, 1],
  spikes: [[], []],
  volts: 12.6,
  ambientC: 20,
  excluded: false,
  unusable: false,
  lagS: 0,
  bump: null,
};

const LEVELS = [8, 7.5];
/** Stroke-to-stroke spread of the running current, and what the sides do not share of it. */
const SHARED = 0.012;
const OWN = 0.006;
export const START_MS = Date.UTC(2026, 2, 1);
const HALF_DAY_MS = 43_200_000;

export const directionOf = (index: number): Direction => (index % 2 === 0 ? 'extend' : 'retract');

/** The measured stroke of this index; extends and retracts take turns, half a day apart. */
export function strokeEvent(
  index: number,
  room: RoomDescription,
  seed: number,
  changes: Partial<Told> = {},
): StrokeEvent {
  const told = { ...PLAIN, ...changes };
  const random = new Random(seed * 7919 + index);
  const together = Math.exp(random.normal(0, SHARED));
  const direction = directionOf(index);
  const sides: Record<string, SideMeasures> = {};
  room.sides.forEach((side, place) => {
    const level = (LEVELS[place] ?? 7) * (direction === 'extend' ? 1 : 1.1) * (told.factors[place] ?? 1);
    sides[side] = sideMeasures(level * together * Math.exp(random.normal(0, OWN)), told, place, random);
  });
  const total = Object.values(sides).reduce((sum, side) => sum + side.runningAmps, 0);
  const analysis: DoneAnalysis = {
    status: 'done',
    direction,
    positionBy: told.volts === null ? 'time' : 'speed',
    sides,
    share: Object.fromEntries(room.sides.map((side) => [side, sides[side].runningAmps / total])),
    lagS: room.sides.length > 1 ? told.lagS + random.normal(0, 0.05) : null,
    supplyVolts: told.volts,
    doubts: [],
  };
  return {
    type: 'stroke',
    strokeId: `stroke-${String(index).padStart(6, '0')}`,
    atMs: START_MS + index * HALF_DAY_MS,
    direction,
    ambientC: told.ambientC,
    excluded: told.excluded,
    analysis: told.unusable ? { status: 'unusable', reason: 'The record shows no motor current.' } : analysis,
  };
}

function sideMeasures(runningAmps: number, told: Told, place: number, random: Random): SideMeasures {
  const durationS = 20 * Math.exp(random.normal(0, 0.008)) * (12.6 / (told.volts ?? 12.6));
  const stall = 40 * ((told.volts ?? 12.6) / 12.6);
  return {
    inrushAmps: stall * Math.exp(random.normal(0, 0.03)),
    runningAmps,
    runningAmpsP90: 1.08 * runningAmps * Math.exp(random.normal(0, 0.004)),
    endStopAmps: 0.95 * stall * Math.exp(random.normal(0, 0.03)),
    // A supply that gives way to nothing.
    ...(told.volts === null ? {} : { endStopVolts: told.volts }),
    durationS,
    chargeAs: runningAmps * durationS,
    energyJ: told.volts === null ? null : runningAmps * durationS * told.volts,
    roughness: 0.15 * Math.exp(random.normal(0, 0.1)),
    spikes: told.spikes[place] ?? [],
    dips: [],
    profile: Array.from({ length: PROFILE_BINS }, (_, bin) => {
      const at = (bin + 0.5) / PROFILE_BINS;
      const { bump } = told;
      const isBumped =
        bump !== null && at > bump.from && at < bump.to && bump.places?.includes(place) !== false;
      const bumped = isBumped ? bump.part : 0;
      return runningAmps * (1 + 0.03 * Math.sin(9 * at) + bumped) + random.normal(0, 0.08);
    }),
    offsetAmps: random.normal(0, 0.05),
    noiseAmps: 0.1,
    phases: { startS: 1, inrushEndS: 1.3, endStopStartS: 1 + durationS, endS: 1.5 + durationS, pauses: [] },
  };
}

/** Work on the room, just before the stroke of this index. */
export function serviceEvent(
  beforeIndex: number,
  kind: ServiceKind,
  side: string | null = null,
): ServiceEvent {
  return {
    type: 'service',
    serviceId: `service-${beforeIndex}-${kind}`,
    atMs: START_MS + beforeIndex * HALF_DAY_MS - 1000,
    kind,
    side,
  };
}

/** A whole history: what stroke `index` tells is `of(index)`. */
export function strokeEvents(
  count: number,
  room: RoomDescription,
  seed: number,
  of: (index: number) => Partial<Told> = () => ({}),
): StrokeEvent[] {
  return Array.from({ length: count }, (_, index) => strokeEvent(index, room, seed, of(index)));
}
