import type { Direction } from '../../analysis/trace.ts';
import { checkNames, Faults, isObject, type JsonObject, own } from '../json/faults.ts';
import { decodeStroke } from '../json/stroke.ts';

/** What a logger says of a stroke before its samples: the stroke of contract section 4 less its numbers. */
export interface LiveHeader {
  readonly key: string;
  readonly roomId: string;
  readonly direction?: Direction;
  readonly startedAt: string;
  readonly sides: readonly { readonly side: string; readonly rateHz: number }[];
  readonly supply?: { readonly rateHz: number };
  readonly ambientC?: number;
}

const KNOWN = new Set([
  'type',
  'token',
  'key',
  'roomId',
  'direction',
  'startedAt',
  'sides',
  'supply',
  'ambientC',
]);
const KNOWN_OF_SIDE = new Set(['side', 'rateHz']);
const KNOWN_OF_SUPPLY = new Set(['rateHz']);
/** Stand for the samples to come, so that the beginning is held to the rules of the whole. */
const SAMPLES = new Float64Array(2);

/**
 * Reads the message that begins a stroke, in one spelling: two beginnings of one stroke are equal. Throws
 * `DecodeError` with the fields at fault.
 */
export function readHeader(message: JsonObject): LiveHeader {
  const faults = new Faults();
  checkNames(message, KNOWN, '', faults);
  const sides = own(message, 'sides');
  const supply = own(message, 'supply');
  const sideRates = Array.isArray(sides)
    ? sides.map((side: unknown, i) => readRate(side, KNOWN_OF_SIDE, `/sides/${i}`, faults))
    : [];
  const supplyRate = supply === undefined ? undefined : readRate(supply, KNOWN_OF_SUPPLY, '/supply', faults);
  if (faults.any) throw faults.toError();
  const stroke = decodeStroke(
    {
      key: own(message, 'key'),
      roomId: own(message, 'roomId'),
      direction: own(message, 'direction'),
      startedAt: own(message, 'startedAt'),
      sides: Array.isArray(sides) ? sides.map((side: object) => ({ ...side, amps: SAMPLES })) : sides,
      supply: supplyRate === undefined ? undefined : { rateHz: supplyRate, volts: SAMPLES },
      ambientC: own(message, 'ambientC'),
    },
    '',
  );
  return {
    key: stroke.key,
    roomId: stroke.roomId.toLowerCase(),
    ...(stroke.direction === null ? {} : { direction: stroke.direction }),
    startedAt: new Date(stroke.startedAtMs).toISOString(),
    sides: stroke.sides.map(({ side }, i) => ({ side, rateHz: Number(sideRates[i]) })),
    ...(supplyRate === undefined ? {} : { supply: { rateHz: Number(supplyRate) } }),
    ...(stroke.ambientC === null ? {} : { ambientC: stroke.ambientC }),
  };
}

/** Samples under way come at a steady rate: times of their own can be sent with a whole stroke only. */
function readRate(value: unknown, known: ReadonlySet<string>, pointer: string, faults: Faults): unknown {
  if (!isObject(value)) return faults.add(pointer, 'Must be an object.');
  checkNames(value, known, pointer, faults);
  return own(value, 'rateHz') ?? faults.add(`${pointer}/rateHz`, 'Is missing.');
}
