import { crc32 } from 'node:zlib';
import type { Clock, RecordedSide, RecordedTrace } from './stroke.ts';
import { ByteReader } from './trace/byteReader.ts';
import { ByteWriter } from './trace/byteWriter.ts';
import { CorruptTraceError } from './trace/corruptTraceError.ts';
import { readSeries, writeSeries } from './trace/series.ts';

/**
 * The samples of one stroke in few bytes, to the last bit. Layout of version 1 (all numbers little-endian; `varint`
 * is LEB128, lowest seven bits first; signed ones in zigzag form):
 *
 *     byte     version, 1
 *     varint   number of sides; for each
 *       varint + UTF-8   its name
 *       clock            byte 0: float64 rateHz; byte 1: a series of seconds; byte 2: as the side before
 *       series           amperes
 *     byte     1 when the supply was recorded, then its clock and a series of volts
 *     byte     1 when the ambient temperature was, then float64 °C
 *     uint32   CRC-32 of everything before it
 *
 * A series:
 *
 *     varint   number of samples
 *     varint   number of exceptions (gaps and -0): `trace/seriesExceptions.ts`
 *     byte     form: 0 n / 10^digits, 1 the same in single precision, 2 n * step, 3 plain float32, 4 plain float64
 *     forms 0 to 2: digits (varint) or step (float64); first n (signed varint); common factor of the steps (varint);
 *       usual step in factors (signed varint); the rest of each step in factors, zigzag, in Rice codes: `trace/rice.ts`
 *     forms 3 and 4: the samples
 */
const VERSION = 1;
const CHECKSUM_BYTES = 4;

export function encodeTrace(trace: RecordedTrace): Buffer {
  const writer = new ByteWriter();
  writer.byte(VERSION);
  writer.varint(trace.sides.length);
  let before: Clock | null = null;
  for (const { side, clock, amps, ampsPerCount } of trace.sides) {
    writer.text(side);
    writeClock(writer, clock, before);
    before = clock;
    writeSeries(writer, amps, ampsPerCount);
  }
  writer.byte(trace.supply ? 1 : 0);
  if (trace.supply) {
    writeClock(writer, trace.supply.clock, before);
    writeSeries(writer, trace.supply.volts);
  }
  writer.byte(trace.ambientC === null ? 0 : 1);
  if (trace.ambientC !== null) writer.float64(trace.ambientC);
  const body = writer.written();
  const bytes = Buffer.allocUnsafe(body.length + CHECKSUM_BYTES);
  bytes.set(body);
  bytes.writeUInt32LE(crc32(body), body.length);
  return bytes;
}

/** Throws `CorruptTraceError` for bytes that are damaged or of another version. */
export function decodeTrace(bytes: Buffer): RecordedTrace {
  if (bytes.length <= CHECKSUM_BYTES) throw new CorruptTraceError('it is empty');
  const body = bytes.subarray(0, bytes.length - CHECKSUM_BYTES);
  if (crc32(body) !== bytes.readUInt32LE(body.length)) throw new CorruptTraceError('its checksum is wrong');
  const reader = new ByteReader(body);
  const version = reader.byte();
  if (version !== VERSION) throw new CorruptTraceError(`its version is ${version}`);
  const sides: RecordedSide[] = [];
  const count = reader.varint();
  let clock: Clock | null = null;
  for (let i = 0; i < count; i++) {
    const side = reader.text();
    clock = readClock(reader, clock);
    sides.push({ side, clock, amps: readSeries(reader) });
  }
  const supply = reader.byte() === 1 ? { clock: readClock(reader, clock), volts: readSeries(reader) } : null;
  const ambientC = reader.byte() === 1 ? reader.float64() : null;
  return { sides, supply, ambientC };
}

function writeClock(writer: ByteWriter, clock: Clock, before: Clock | null): void {
  if (before !== null && sameClock(clock, before)) {
    writer.byte(2);
  } else if ('rateHz' in clock) {
    writer.byte(0);
    writer.float64(clock.rateHz);
  } else {
    writer.byte(1);
    writeSeries(writer, clock.t);
  }
}

function readClock(reader: ByteReader, before: Clock | null): Clock {
  const kind = reader.byte();
  if (kind === 0) return { rateHz: reader.float64() };
  if (kind === 1) return { t: readSeries(reader) };
  if (kind === 2 && before !== null) return before;
  throw new CorruptTraceError(`there is no kind ${kind} of a clock here`);
}

function sameClock(a: Clock, b: Clock): boolean {
  if ('rateHz' in a) return 'rateHz' in b && a.rateHz === b.rateHz;
  if ('rateHz' in b || a.t.length !== b.t.length) return false;
  for (let i = 0; i < a.t.length; i++) if (!Object.is(a.t[i], b.t[i])) return false;
  return true;
}
