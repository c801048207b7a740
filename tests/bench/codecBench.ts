import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { decodeTrace, encodeTrace } from '../../ingest/traceCodec.ts';
import { differenceEntropy } from './entropy.ts';
import { randomNumbers, syntheticMilliamps } from './syntheticStroke.ts';
import type { Line } from './table.ts';

const RECORDINGS = new URL('../../../shared/open-data/linear-actuator/', import.meta.url);
const AIM = 1.08;
const SYNTHETIC = 200;

/** Bytes of a trace against the entropy of its first difference, and the time that packing it takes. */
export function codecBench(): Line[] {
  const random = randomNumbers(5);
  const synthetic = Array.from({ length: SYNTHETIC }, () => syntheticMilliamps(random));
  const ready = synthetic.map((milliamps) =>
    trace(
      milliamps.map((n) => n / 1000),
      125,
    ),
  );
  const lines = [
    {
      what: 'trace bytes to entropy, synthetic, 1 mA',
      ratio: bytesToEntropy(synthetic, 1000, 125),
      aim: `<= ${AIM}`,
    },
    { what: 'encode one side (1,250 samples), µs', ratio: microseconds(ready, encodeTrace), aim: '' },
    { what: 'decode one side, µs', ratio: microseconds(ready.map(encodeTrace), decodeTrace), aim: '' },
  ];
  const recorded = recordings();
  if (recorded.length > 0) {
    const ratio = bytesToEntropy(recorded, 10_000, 25);
    lines.unshift({ what: 'trace bytes to entropy, recorded (open data)', ratio, aim: `<= ${AIM}` });
  }
  return lines;
}

function bytesToEntropy(sides: readonly number[][], perAmp: number, rateHz: number): number {
  let bytes = 0;
  let samples = 0;
  for (const integers of sides) {
    bytes += encodeTrace(
      trace(
        integers.map((n) => n / perAmp),
        rateHz,
      ),
    ).length;
    samples += integers.length;
  }
  return (8 * bytes) / (differenceEntropy(sides) * samples);
}

function trace(amps: readonly number[], rateHz: number) {
  return {
    sides: [{ side: 'main', clock: { rateHz }, amps: Float64Array.from(amps) }],
    supply: null,
    ambientC: null,
  };
}

function microseconds<Item>(items: readonly Item[], work: (item: Item) => unknown): number {
  for (let i = 0; i < 5; i++) for (const item of items) work(item);
  const started = performance.now();
  for (const item of items) work(item);
  return (1000 * (performance.now() - started)) / items.length;
}

/** Whole recordings of C. Ruiz-Carcel and A. Starr, doi:10.17862/cranfield.rd.5097649, in units of 0.1 mA. */
function recordings(): number[][] {
  if (!existsSync(RECORDINGS)) return [];
  return readdirSync(RECORDINGS)
    .filter((name) => name.includes('_run'))
    .map((name) =>
      readFileSync(new URL(name, RECORDINGS), 'utf8')
        .trim()
        .split('\n')
        .slice(1)
        .map((line) => Math.round(Number(line.split(',')[1]) * 10_000)),
    );
}
