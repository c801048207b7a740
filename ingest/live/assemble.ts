import { DecodeError } from '../decodeError.ts';
import { decodeStroke } from '../json/stroke.ts';
import { MIN_SAMPLES } from '../limits.ts';
import type { IncomingStroke } from '../stroke.ts';
import type { LiveHeader } from './header.ts';

const BYTES_PER_SAMPLE = 8;

/** The samples of a piece as they are kept: doubles, little-endian, whatever machine wrote them. */
export function packSamples(samples: Float64Array): Buffer {
  const bytes = Buffer.allocUnsafe(samples.length * BYTES_PER_SAMPLE);
  for (let i = 0; i < samples.length; i++) bytes.writeDoubleLE(samples[i], i * BYTES_PER_SAMPLE);
  return bytes;
}

export function unpackSamples(bytes: Buffer): Float64Array {
  const samples = new Float64Array(bytes.length / BYTES_PER_SAMPLE);
  for (let i = 0; i < samples.length; i++) samples[i] = bytes.readDoubleLE(i * BYTES_PER_SAMPLE);
  return samples;
}

interface KeptPiece {
  readonly side: number | null;
  readonly samples: Buffer;
}

/**
 * Makes the whole stroke of its pieces, in the order of their seq, and holds it to the rules that every stroke is
 * held to. Sides that nothing came of are left out; one of a single sample gets a missed one, as what was acknowledged
 * is not thrown away. Throws `DecodeError` where nothing came.
 */
export function assembleStroke(header: LiveHeader, pieces: readonly KeptPiece[]): IncomingStroke {
  const samplesOf = (side: number | null) =>
    unpackSamples(Buffer.concat(pieces.filter((piece) => piece.side === side).map(({ samples }) => samples)));
  const sides = header.sides
    .map((side, place) => ({ ...side, amps: samplesOf(place) }))
    .filter(({ amps }) => amps.length > 0)
    .map(({ amps, ...side }) => ({ ...side, amps: atLeastTwo(amps) }));
  if (sides.length === 0) throw DecodeError.at('/sides', 'No sample of any side came.');
  const volts = samplesOf(null);
  const supply = header.supply && volts.length > 0 ? { ...header.supply, volts } : undefined;
  return decodeStroke({ ...header, sides, supply }, '');
}

function atLeastTwo(amps: Float64Array): Float64Array {
  if (amps.length >= MIN_SAMPLES) return amps;
  const padded = new Float64Array(MIN_SAMPLES).fill(Number.NaN);
  padded.set(amps);
  return padded;
}
