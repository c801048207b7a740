import type { DoneAnalysis, SideMeasures, StrokeAnalysis, UnusableAnalysis } from './measures.ts';
import { doubtsOf } from './stroke/doubts/doubts.ts';
import { lagOf } from './stroke/lag.ts';
import { measureSide } from './stroke/measureSide.ts';
import { directionBySign } from './stroke/read/direction.ts';
import { readSides, sidesToMeasure, TOO_BRIEF } from './stroke/read/readSides.ts';
import { interpolate } from './stroke/signal/interpolate.ts';
import { plausibleSupply } from './stroke/signal/plausibleSupply.ts';
import { supplyAtStop } from './stroke/supplyAtStop.ts';
import type { Direction, RoomDescription, StrokeTrace, SupplyTrace } from './trace.ts';

/**
 * Everything that one stroke's samples say without the room's history: phases, measures, positions, the share of
 * the sides and the lag between them.
 *
 * A side that was recorded but drew nothing is left out and said in `doubts`; a stroke in which no side can be
 * measured is `unusable` with a reason for people. Never throws for any trace of finite numbers and NaN.
 */
export function measureStroke(trace: StrokeTrace, room: RoomDescription): StrokeAnalysis {
  const direction = trace.direction ?? directionBySign(trace, room);
  if (direction === null) {
    return unusable(null, 'The direction was not given and cannot be told from the sign of the current.');
  }
  const { active, unread } = readSides(trace);
  const doubts: DoneAnalysis['doubts'][number][] = [...unread];
  const reasons = unread.map(({ side, detail }) => `${side}: ${detail}`);
  if (active.length === 0) {
    // A switch that was only tapped speaks against no sensor.
    const tapped = unread.every(({ detail }) => detail === TOO_BRIEF.detail);
    return unusable(
      direction,
      `No side could be measured. ${reasons.join(' ')}`.trim(),
      tapped ? [] : doubts,
    );
  }
  const supply = plausibleSupply(trace.supply, room.nominalVolts);
  const sides: Record<string, SideMeasures> = {};
  for (const side of sidesToMeasure(active, supply, direction)) {
    const measured = measureSide(side);
    if (measured === null) continue;
    const endStopVolts = supplyAtStop(supply, measured.phases);
    sides[side.signal.side] = endStopVolts === null ? measured : { ...measured, endStopVolts };
    doubts.push(...doubtsOf(side.signal, side.rest, measured));
  }
  const names = room.sides.filter((name) => sides[name] !== undefined);
  if (names.length === 0)
    return unusable(direction, 'The stroke is too short to hold any running current.', doubts);
  return {
    status: 'done',
    direction,
    positionBy: supply === null ? 'time' : 'speed',
    sides,
    share: shareOf(sides, room),
    lagS: lagOf(sides, room),
    supplyVolts: supplyWhileRunning(supply, sides[names[0]]),
    doubts,
  };
}

function unusable(
  direction: Direction | null,
  reason: string,
  doubts: DoneAnalysis['doubts'] = [],
): UnusableAnalysis {
  return { status: 'unusable', reason, doubts, direction };
}

/** Each side's part of the running current of all; null where one of the room's sides was not measured. */
function shareOf(sides: Record<string, SideMeasures>, room: RoomDescription): Record<string, number> | null {
  if (room.sides.some((name) => sides[name] === undefined)) return null;
  const total = room.sides.reduce((sum, name) => sum + sides[name].runningAmps, 0);
  if (!(total > 0)) return null;
  return Object.fromEntries(room.sides.map((name) => [name, sides[name].runningAmps / total]));
}

/** So many readings, evenly over the running part, make the mean. */
const SUPPLY_READINGS = 64;

/** Mean volts from the end of a side's inrush to its end stop, or its end; null where nobody recorded the supply. */
function supplyWhileRunning(supply: SupplyTrace | null, side: SideMeasures): number | null {
  if (supply === null) return null;
  const { inrushEndS, endStopStartS, endS } = side.phases;
  const toS = endStopStartS ?? endS;
  const times = new Float64Array(SUPPLY_READINGS);
  for (let i = 0; i < times.length; i++)
    times[i] = inrushEndS + ((i + 0.5) / SUPPLY_READINGS) * (toS - inrushEndS);
  return interpolate(supply, times).reduce((sum, volts) => sum + volts, 0) / times.length;
}
