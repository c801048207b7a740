import { checkNames, Faults, type JsonObject, own } from '../json/faults.ts';
import { readNumbers } from '../json/numbers.ts';
import { readAmps } from '../json/side.ts';
import { VOLTS } from '../json/stroke.ts';
import { MAX_SAMPLES } from '../limits.ts';
import type { LiveHeader } from './header.ts';

/** One piece of a stroke under way. */
export interface LivePiece {
  readonly seq: number;
  /** Place in the header's sides; null: the supply. */
  readonly side: number | null;
  /** Amperes, or volts of the supply; NaN: missed. */
  readonly samples: Float64Array;
}

const KNOWN = new Set([
  'type',
  'token',
  'key',
  'seq',
  'side',
  'amps',
  'milliamps',
  'counts',
  'ampsPerCount',
  'volts',
]);
const MOST_SEQ = 2 ** 31 - 1;

/** The number that orders a piece within its stroke; null where it is none. */
export function seqOf(message: JsonObject): number | null {
  const seq = own(message, 'seq');
  return typeof seq === 'number' && Number.isInteger(seq) && seq >= 0 && seq <= MOST_SEQ ? seq : null;
}

/** Reads the message that brings samples. Throws `DecodeError` with the fields at fault. */
export function readSamples(message: JsonObject, header: LiveHeader): LivePiece {
  const faults = new Faults();
  checkNames(message, KNOWN, '', faults);
  const seq = seqOf(message) ?? faults.add('/seq', 'Must be a whole number that counts from 0.');
  const side = own(message, 'side');
  const volts = own(message, 'volts');
  const ofSupply = side === undefined && volts !== undefined;
  const samples = ofSupply ? readVolts(volts, header, faults) : readAmps(message, '', faults, 1);
  if (!ofSupply && volts !== undefined)
    faults.add('/volts', "The supply's samples are a message of their own.");
  const place = ofSupply ? null : header.sides.findIndex((known) => known.side === side);
  if (place === -1) faults.add('/side', 'Must be one of the sides that the stroke began with.');
  if (faults.any || seq === null || samples === null) throw faults.toError();
  return { seq, side: place, samples };
}

function readVolts(volts: unknown, header: LiveHeader, faults: Faults): Float64Array | null {
  if (header.supply === undefined) return faults.add('/volts', 'The stroke began without a supply.');
  return readNumbers(volts, VOLTS, '/volts', faults);
}

/** Samples so far, by place of the side; the supply's come last. */
export class SampleCounts {
  readonly #counts = new Map<number | null, number>();

  of(side: number | null): number {
    return this.#counts.get(side) ?? 0;
  }

  /** Answers the place of the first of the samples that are added. */
  add(side: number | null, samples: number): number {
    const first = this.of(side);
    this.#counts.set(side, first + samples);
    return first;
  }

  /** Whether so many more are more than a stroke may hold. */
  wouldOverflow(side: number | null, samples: number): boolean {
    return this.of(side) + samples > MAX_SAMPLES;
  }
}
