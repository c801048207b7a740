import type { ByteReader } from './byteReader.ts';
import type { ByteWriter } from './byteWriter.ts';
import { CorruptTraceError } from './corruptTraceError.ts';
import { differences, integrate } from './differences.ts';
import { findWholeNumbers, fromWhole } from './resolution.ts';
import { readRice, writeRice } from './rice.ts';
import { readExceptions, restoreExceptions, takeExceptions, writeExceptions } from './seriesExceptions.ts';

/** The first byte of a series. */
const FORMS = ['decimal', 'float32', 'step', 'plain float32', 'plain float64'] as const;
const MOST_SAMPLES = 1_000_000;

/**
 * Writes numbers so that `readSeries` gives the very same ones: -0, gaps (NaN) and the last bit included. `step`: what
 * they may be multiples of, as far as the caller knows.
 */
export function writeSeries(writer: ByteWriter, values: Float64Array, step?: number): void {
  writer.varint(values.length);
  const { exceptions, filled } = takeExceptions(values);
  writeExceptions(writer, exceptions);
  const whole = findWholeNumbers(filled, step);
  if (whole === null) {
    writePlain(writer, filled);
    return;
  }
  writer.byte(FORMS.indexOf(whole.form));
  if (whole.form === 'step') writer.float64(whole.parameter);
  else writer.varint(whole.parameter);
  const { first, factor, drift, residuals } = differences(whole.integers);
  writer.varint(zigzag(first));
  writer.varint(factor);
  writer.varint(zigzag(drift));
  writeRice(writer, residuals);
}

export function readSeries(reader: ByteReader): Float64Array {
  const count = reader.varint();
  if (count > MOST_SAMPLES) throw new CorruptTraceError(`a series of ${count} samples is too long`);
  const exceptions = readExceptions(reader, count);
  const code = reader.byte();
  const form = FORMS[code];
  if (form === undefined) throw new CorruptTraceError(`there is no form ${code} of a series`);
  const values =
    form === 'plain float32' || form === 'plain float64'
      ? readPlain(reader, count, form === 'plain float32' ? 4 : 8)
      : readWhole(reader, count, form);
  restoreExceptions(values, exceptions);
  return values;
}

function readWhole(reader: ByteReader, count: number, form: 'decimal' | 'float32' | 'step'): Float64Array {
  const parameter = form === 'step' ? reader.float64() : reader.varint();
  const first = unzigzag(reader.varint());
  const factor = reader.varint();
  const drift = unzigzag(reader.varint());
  const residuals = readRice(reader, Math.max(0, count - 1));
  const values = integrate({ first, factor, drift, residuals }, count);
  fromWhole(form, parameter, values);
  return values;
}

function writePlain(writer: ByteWriter, values: Float64Array): void {
  const single = values.every((value) => Math.fround(value) === value);
  const size = single ? 4 : 8;
  writer.byte(FORMS.indexOf(single ? 'plain float32' : 'plain float64'));
  const bytes = new Uint8Array(values.length * size);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < values.length; i++) {
    if (single) view.setFloat32(i * size, values[i], true);
    else view.setFloat64(i * size, values[i], true);
  }
  writer.raw(bytes);
}

function readPlain(reader: ByteReader, count: number, size: 4 | 8): Float64Array {
  const bytes = reader.raw(count * size);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const values = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    values[i] = size === 4 ? view.getFloat32(i * size, true) : view.getFloat64(i * size, true);
  }
  return values;
}

function zigzag(n: number): number {
  return n < 0 ? -2 * n - 1 : 2 * n;
}

function unzigzag(u: number): number {
  return u % 2 === 0 ? u / 2 : -(u + 1) / 2;
}
