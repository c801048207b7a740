import type { Bump, StrokeCondition } from './condition.ts';
import { type DrivenStroke, driveRoom } from './driveRoom.ts';
import { Random } from './random.ts';
import { recordStroke, type SideSamples } from './recordStroke.ts';
import type { SimulatedRoom } from './room.ts';
import type { StrokeRecord } from './strokeRecord.ts';

/** When one motor did what, seconds on the logger's clock from `startedAt`. */
interface MotorPhases {
  readonly startS: number;
  readonly inrushEndS: number;
  readonly endStopStartS: number | null;
  readonly endS: number;
  readonly pauses: readonly { readonly fromS: number; readonly toS: number }[];
}

interface SideTruth extends SideSamples {
  readonly side: string;
  readonly phases: MotorPhases;
  /** Bumps that this side passed over. */
  readonly bumps: readonly Bump[];
  readonly startPosition: number;
  readonly endPosition: number;
}

/** A recording, and what really happened. */
export interface SimulatedStroke {
  readonly stroke: StrokeRecord;
  readonly truth: {
    readonly sides: readonly SideTruth[];
    /** Mean volts at the controller's terminals after the inrush and before the first end stop. */
    readonly runningVolts: number;
  };
}

/** The inrush is over when the current has fallen to this multiple of its median while the motor is powered. */
const INRUSH_OVER = 1.3;
/** The median needs no more than every nth step. */
const MEDIAN_STRIDE = 25;

function inrushEndS(driven: DrivenStroke, side: number): number {
  const amps = driven.amps[side];
  const powered: number[] = [];
  for (let step = 0; step < driven.steps; step += MEDIAN_STRIDE) if (amps[step] > 0) powered.push(amps[step]);
  powered.sort((one, other) => one - other);
  const level = INRUSH_OVER * (powered[powered.length >> 1] ?? 0);
  let peak = 0;
  const searched = Math.min(driven.steps, Math.ceil(1 / driven.stepS));
  for (let step = 1; step < searched; step++) if (amps[step] > amps[peak]) peak = step;
  let step = peak;
  while (step < driven.steps - 1 && amps[step] > level) step++;
  return step * driven.stepS;
}

function runningVolts(driven: DrivenStroke): number {
  const starts = driven.events.map((_, side) => inrushEndS(driven, side));
  const ends = driven.events.map(({ stopS, offS }) => stopS ?? offS);
  const from = Math.floor(Math.max(...starts) / driven.stepS);
  const to = Math.max(Math.floor(Math.min(...ends) / driven.stepS), from + 1);
  const span = driven.volts.subarray(from, to);
  return span.reduce((sum, value) => sum + value, 0) / span.length;
}

/** One stroke of a room under given conditions. The same seed gives the same recording. */
export function simulateStroke(
  room: SimulatedRoom,
  condition: StrokeCondition,
  seed: number,
): SimulatedStroke {
  const driven = driveRoom(room, condition);
  const positive = condition.direction === room.facts.positiveDirection;
  const recorded = recordStroke(driven, room.facts.sides, positive, condition, new Random(seed));
  const { idleBeforeS, rateError } = condition.logger;
  const onLoggerClock = (strokeS: number): number => (strokeS + idleBeforeS) / rateError;
  const sides = room.facts.sides.map((side, index): SideTruth => {
    const { stopS, offS } = driven.events[index];
    const positions = driven.positions[index];
    return {
      side,
      ...recorded.samples[index],
      phases: {
        startS: onLoggerClock(0),
        inrushEndS: onLoggerClock(inrushEndS(driven, index)),
        endStopStartS: stopS === null ? null : onLoggerClock(stopS),
        endS: onLoggerClock(offS),
        pauses: driven.pauses.map(({ fromS, toS }) => ({
          fromS: onLoggerClock(fromS),
          toS: onLoggerClock(toS),
        })),
      },
      bumps: condition.bumps.filter((bump) => bump.sideIndex === index),
      startPosition: condition.startPosition,
      endPosition: positions[positions.length - 1],
    };
  });
  return { stroke: recorded.stroke, truth: { sides, runningVolts: runningVolts(driven) } };
}
