import type {
  Direction,
  RoomDescription,
  SideTrace,
  StrokeTrace,
  SupplyTrace,
} from '../../../../analysis/trace.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';

/** A stroke drawn from plain shapes: rest, a start that decays to the running level, a stall at the end, rest. */
export interface Shape {
  readonly rateHz: number;
  readonly idleBeforeS: number;
  readonly idleAfterS: number;
  /** From the start to the end stop, pauses not counted. */
  readonly movingS: number;
  readonly runningAmps: number;
  readonly inrushAmps: number;
  readonly inrushTauS: number;
  /** null: the motor is switched off before any stop. */
  readonly stopAmps: number | null;
  readonly stopS: number;
  /** Raised cosines on top of the running level; `atS` counts from the start, pauses not counted. */
  readonly bumps: readonly { readonly atS: number; readonly widthS: number; readonly amps: number }[];
  readonly pauses: readonly { readonly atS: number; readonly forS: number }[];
  readonly offsetAmps: number;
  readonly noiseAmps: number;
  readonly stepAmps: number;
  readonly sign: 1 | -1;
  readonly seed: number;
}

export const PLAIN: Shape = {
  rateHz: 50,
  idleBeforeS: 1,
  idleAfterS: 1,
  movingS: 20,
  runningAmps: 8,
  inrushAmps: 40,
  inrushTauS: 0.06,
  stopAmps: 38,
  stopS: 0.5,
  bumps: [],
  pauses: [],
  offsetAmps: 0,
  noiseAmps: 0,
  stepAmps: 0,
  sign: 1,
  seed: 1,
};

export const lastingS = (shape: Shape): number =>
  shape.idleBeforeS +
  shape.movingS +
  shape.pauses.reduce((sum, pause) => sum + pause.forS, 0) +
  (shape.stopAmps === null ? 0 : shape.stopS) +
  shape.idleAfterS;

/** The true current at a time of the record. */
export function currentAt(shape: Shape, timeS: number): number {
  let sinceStart = timeS - shape.idleBeforeS;
  if (sinceStart < 0) return 0;
  let moved = sinceStart;
  for (const { atS, forS } of shape.pauses) {
    if (moved >= atS && moved < atS + forS) return 0;
    if (moved >= atS + forS) {
      moved -= forS;
      sinceStart = moved - atS;
    }
  }
  if (moved >= shape.movingS) {
    const stalled = shape.stopAmps !== null && moved < shape.movingS + shape.stopS;
    return stalled ? (shape.stopAmps ?? 0) : 0;
  }
  const start = (shape.inrushAmps - shape.runningAmps) * Math.exp(-sinceStart / shape.inrushTauS);
  const bumps = shape.bumps.reduce((sum, { atS, widthS, amps }) => {
    const off = Math.abs(moved - atS) / widthS;
    return off < 1 ? sum + (amps * (1 + Math.cos(Math.PI * off))) / 2 : sum;
  }, 0);
  return shape.runningAmps + start + bumps;
}

/** The charge of the shape in closed form, ampere seconds. */
export function chargeOf(shape: Shape): number {
  const starts = 1 + shape.pauses.length;
  const running = shape.runningAmps * shape.movingS;
  const inrush = starts * (shape.inrushAmps - shape.runningAmps) * shape.inrushTauS;
  const bumps = shape.bumps.reduce((sum, { widthS, amps }) => sum + amps * widthS, 0);
  return running + inrush + bumps + (shape.stopAmps ?? 0) * (shape.stopAmps === null ? 0 : shape.stopS);
}

export function evenTimes(rateHz: number, lengthS: number): Float64Array {
  return Float64Array.from({ length: Math.floor(lengthS * rateHz) }, (_, i) => i / rateHz);
}

/** What a clamp would read of the shape at the given times (its own even ones unless told). */
export function sideOf(side: string, changes: Partial<Shape> = {}, times?: Float64Array): SideTrace {
  const shape = { ...PLAIN, ...changes };
  const timesS = times ?? evenTimes(shape.rateHz, lastingS(shape));
  const random = new Random(shape.seed);
  const amps = timesS.map((timeS) => {
    const read = shape.sign * currentAt(shape, timeS) + shape.offsetAmps;
    const noisy = shape.noiseAmps > 0 ? read + random.normal(0, shape.noiseAmps) : read;
    return shape.stepAmps > 0 ? Math.round(noisy / shape.stepAmps) * shape.stepAmps : noisy;
  });
  return { side, timesS, amps };
}

export function traceOf(
  sides: readonly SideTrace[],
  direction: Direction | null = 'extend',
  supply: SupplyTrace | null = null,
): StrokeTrace {
  return { direction, sides, supply, ambientC: null };
}

export const ROOM: RoomDescription = {
  drive: 'in-wall',
  sides: ['front', 'rear'],
  travelMetres: 0.9,
  gearTeeth: 15,
  rackPitchMm: 6,
  ratedAmps: null,
  nominalVolts: 12,
  positiveDirection: 'extend',
};

export const ONE_MOTOR: RoomDescription = { ...ROOM, drive: 'through-frame', sides: ['main'] };
