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
 * held to. Sides that nothing came of are left out. Throws `DecodeError` where it is too little to be a stroke.
 */
export function assembleStroke(header: LiveHeader, pieces: readonly KeptPiece[]): IncomingStroke {
  const samplesOf = (side: number | null) =>
    unpackSamples(Buffer.concat(pieces.filter((piece) => piece.side === side).map(({ samples }) => samples)));
  const sides = header.sides
    .map((side, place) => ({ ...side, amps: samplesOf(place) }))
    .filter(({ amps }) => amps.length > 0);
  const volts = samplesOf(null);
  const supply = header.supply && volts.length > 0 ? { ...header.supply, volts } : undefined;
  return decodeStroke({ ...header, sides, supply }, '');
}

/**
 * The same of a stroke that its sender will not end any more: a side of a single sample gets a missed one, as what
 * was acknowledged is not thrown away. Null where nothing came.
 */
export function assembleCutShort(header: LiveHeader, pieces: readonly KeptPiece[]): IncomingStroke | null {
  const missed = packSamples(Float64Array.of(Number.NaN));
  const padded = [...pieces];
  for (const place of header.sides.keys()) {
    const bytes = pieces.reduce((sum, piece) => sum + (piece.side === place ? piece.samples.length : 0), 0);
    const isShort = bytes > 0 && bytes < MIN_SAMPLES * BYTES_PER_SAMPLE;
    if (isShort) padded.push({ side: place, samples: missed });
  }
  return pieces.some(({ side }) => side !== null) ? assembleStroke(header, padded) : null;
}
