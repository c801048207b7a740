import { type PlacedSide, placeSide } from './stroke/measureSide.ts';
import type { SideToMeasure } from './stroke/read/activeSide.ts';
import { directionBySign } from './stroke/read/direction.ts';
import { readSides, sidesToMeasure } from './stroke/read/readSides.ts';
import { interpolate } from './stroke/signal/interpolate.ts';
import { firstAtOrAfter } from './stroke/signal/interval.ts';
import { plausibleSupply } from './stroke/signal/plausibleSupply.ts';
import type { Direction, RoomDescription, StrokeTrace, SupplyTrace } from './trace.ts';

/** Readings by position, 0 fully retracted to 1 fully extended, positions rising. */
export interface AlongTravel {
  readonly positions: Float64Array;
  readonly values: Float64Array;
}

/** One side's current along the travel while the room moved, amperes less the sensor's offset. */
export interface SideAlongTravel extends AlongTravel {
  readonly side: string;
  /** Where the inrush was over. */
  readonly inrushEnd: number;
  /** Where the motor met its stop; null where it was switched off before. */
  readonly endStop: number | null;
  /** Where the motor stood still and started again. */
  readonly pauses: readonly number[];
}

/** One stroke by where the room was. */
export interface TravelTrace {
  readonly direction: Direction;
  readonly sides: readonly SideAlongTravel[];
  /** Volts; null where the supply was not recorded, or cannot be one. */
  readonly supply: AlongTravel | null;
}

/**
 * The samples of a stroke by where the room was, in place of when: the same positions that its measures stand on.
 * Null where the direction is not known or no side can be measured. Never throws for any trace of finite numbers
 * and NaN.
 */
export function travelTrace(trace: StrokeTrace, room: RoomDescription): TravelTrace | null {
  const direction = trace.direction ?? directionBySign(trace, room);
  if (direction === null) return null;
  const { active } = readSides(trace);
  if (active.length === 0) return null;
  const supply = plausibleSupply(trace.supply, room.nominalVolts);
  const placed = sidesToMeasure(active, supply, direction).flatMap((side) => {
    const found = placeSide(side);
    return found === null ? [] : [{ side, found }];
  });
  if (placed.length === 0) return null;
  return {
    direction,
    sides: placed.map(({ side, found }) => sideAlong(side, found)),
    supply: supply === null ? null : supplyAlong(supply, placed[0].side, placed[0].found),
  };
}

function sideAlong(side: SideToMeasure, { phases, positions, movingToS }: PlacedSide): SideAlongTravel {
  const { timesS } = side.signal;
  const from = firstAtOrAfter(timesS, phases.startS);
  const to = Math.max(from, firstAtOrAfter(timesS, movingToS));
  const placeAt = (seconds: number) =>
    positions[Math.min(positions.length - 1, firstAtOrAfter(timesS, seconds))];
  return {
    side: side.signal.side,
    ...rising(positions.slice(from, to), side.amps.slice(from, to), side.direction),
    inrushEnd: placeAt(phases.inrushEndS),
    endStop: phases.endStopStartS === null ? null : placeAt(phases.endStopStartS),
    pauses: phases.pauses.map(({ fromS }) => placeAt(fromS)),
  };
}

/** The supply's readings while the room moved, by the places of one side, which `interpolate` tells in place of volts. */
function supplyAlong(
  supply: SupplyTrace,
  side: SideToMeasure,
  { phases, positions, movingToS }: PlacedSide,
): AlongTravel {
  const from = firstAtOrAfter(supply.timesS, phases.startS);
  const to = Math.max(from, firstAtOrAfter(supply.timesS, movingToS));
  const timesS = supply.timesS.slice(from, to);
  const places = interpolate({ timesS: side.signal.timesS, volts: positions }, timesS);
  return rising(places, supply.volts.slice(from, to), side.direction);
}

/** Turned round where the room went in: what it passed last lies nearest to fully retracted. */
function rising(positions: Float64Array, values: Float64Array, direction: Direction): AlongTravel {
  if (direction === 'extend') return { positions, values };
  return { positions: positions.reverse(), values: values.reverse() };
}
