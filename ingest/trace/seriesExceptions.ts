import type { ByteReader } from './byteReader.ts';
import type { ByteWriter } from './byteWriter.ts';
import { CorruptTraceError } from './corruptTraceError.ts';

/** Samples that whole numbers cannot stand for. */
export interface SeriesException {
  readonly index: number;
  /** `gap`: a missed sample (NaN); `minus`: -0, as a board prints it that rounds -0.004 to two digits. */
  readonly kind: 'gap' | 'minus';
}

/** Takes the exceptions out; each place is filled with the value before it, which costs next to nothing. */
export function takeExceptions(values: Float64Array): {
  exceptions: SeriesException[];
  filled: Float64Array;
} {
  const exceptions: SeriesException[] = [];
  for (let index = 0; index < values.length; index++) {
    const value = values[index];
    if (Number.isNaN(value)) exceptions.push({ index, kind: 'gap' });
    else if (Object.is(value, -0)) exceptions.push({ index, kind: 'minus' });
  }
  if (exceptions.length === 0) return { exceptions, filled: values };
  const filled = values.slice();
  for (const { index, kind } of exceptions) {
    filled[index] = kind === 'minus' ? 0 : index > 0 ? filled[index - 1] : 0;
  }
  return { exceptions, filled };
}

/** Their number, then for each the distance from the one before, doubled, plus one for `minus`. */
export function writeExceptions(writer: ByteWriter, exceptions: readonly SeriesException[]): void {
  writer.varint(exceptions.length);
  let before = -1;
  for (const { index, kind } of exceptions) {
    writer.varint((index - before) * 2 + (kind === 'minus' ? 1 : 0));
    before = index;
  }
}

export function readExceptions(reader: ByteReader, samples: number): SeriesException[] {
  const count = reader.varint();
  if (count > samples) throw new CorruptTraceError(`${count} gaps are more than its ${samples} samples`);
  const exceptions: SeriesException[] = [];
  let index = -1;
  for (let i = 0; i < count; i++) {
    const code = reader.varint();
    index += Math.floor(code / 2);
    exceptions.push({ index, kind: code % 2 === 1 ? 'minus' : 'gap' });
  }
  if (index >= samples) throw new CorruptTraceError(`a gap at ${index} lies behind its ${samples} samples`);
  return exceptions;
}

export function restoreExceptions(values: Float64Array, exceptions: readonly SeriesException[]): void {
  for (const { index, kind } of exceptions) values[index] = kind === 'gap' ? Number.NaN : -0;
}
