import { readFile } from 'node:fs/promises';
import { type LoggerLink, openLink } from '../support/loggerLink.ts';
import { withPostgres } from './benchPostgres.ts';
import { type BenchFleet, makeFleet } from './fleet.ts';
import { sendAll } from './load.ts';
import { startBenchService } from './startBenchService.ts';
import { randomNumbers, syntheticStroke } from './syntheticStroke.ts';
import type { Line } from './table.ts';

const STREAMS = 200;
const BATCHES = 8;
const PIECES = 60;
const PIECE_SAMPLES = 10;
const BATCH_BYTES = 32 * 1024 * 1024;
const MOST_STROKES = 500;
const AIM = '<= 512';

/**
 * The service's resident memory, MiB, the worker and its thread included: with 200 streams of one logger at once as
 * quick as they are acknowledged and stored in the end, with a batch of 32 MiB beside them, and with eight of those that one logger sends at once. `part`
 * of one makes it so many fewer streams.
 */
export function memoryBench(part: number): Promise<Line[]> {
  return withPostgres(async ({ newDatabase }) => {
    const service = await startBenchService(await newDatabase('memory'));
    const read = () => residentMebibytes(service.process.pid);
    try {
      const fleet = await makeFleet(String(service.said.url), 40);
      const idle = (await read()).now;
      const places = Array.from({ length: Math.ceil(STREAMS * part) }, (_, i) => i);
      const streams = await Promise.all(places.map((place) => begin(fleet, place)));
      const started = performance.now();
      await Promise.all(streams.map(sayPieces));
      const seconds = (performance.now() - started) / 1000;
      const streamed = (await read()).highest;
      const target = {
        url: `${fleet.url}/api/v1/strokes`,
        headers: { authorization: `Bearer ${fleet.logger}` },
      };
      await sendAll(target, [largestBatch(fleet, 0)], 1);
      const batched = (await read()).highest;
      const batches = Array.from({ length: BATCHES }, (_, i) => largestBatch(fleet, i + 1));
      await sendAll(target, batches, BATCHES);
      const crowded = (await read()).highest;
      await Promise.all(streams.map((stream, place) => end(fleet, stream, place)));
      return [
        { what: 'after the start, MiB', ratio: idle, aim: '' },
        { what: `highest with ${streams.length} live streams at once, MiB`, ratio: streamed, aim: AIM },
        { what: 'highest with a batch of 32 MiB besides, MiB', ratio: batched, aim: AIM },
        { what: `highest with ${BATCHES} such batches at once, MiB`, ratio: crowded, aim: AIM },
        {
          what: 'pieces acknowledged a second',
          ratio: (streams.length * (PIECES - 1)) / seconds,
          aim: '>= 2000',
        },
      ];
    } finally {
      await service.stop();
    }
  });
}

/** From the kernel (proc(5)): VmRSS and VmHWM. */
async function residentMebibytes(pid: number | undefined): Promise<{ now: number; highest: number }> {
  const status = await readFile(`/proc/${pid}/status`, 'utf8');
  const kibibytes = (name: string) => Number(new RegExp(`^${name}:\\s+(\\d+) kB`, 'm').exec(status)?.[1]);
  return { now: kibibytes('VmRSS') / 1024, highest: kibibytes('VmHWM') / 1024 };
}

interface Stream {
  readonly link: LoggerLink;
  readonly key: string;
}

/** Begins a stroke on a link of its own with its first piece, acknowledged. */
async function begin(fleet: BenchFleet, place: number): Promise<Stream> {
  const link = await openLink(fleet.url, fleet.logger);
  const key = `stream ${place}`;
  link.say(beginning(fleet, key, place));
  link.say(piece(key, 0));
  await link.next('ack');
  return { link, key };
}

const beginning = ({ rooms }: BenchFleet, key: string, place: number) => ({
  type: 'begin',
  key,
  roomId: rooms[place % rooms.length],
  direction: 'extend',
  startedAt: '2026-05-02T16:20:11Z',
  sides: [{ side: 'front', rateHz: 100 }],
});

const piece = (key: string, seq: number) => ({
  type: 'samples',
  key,
  seq,
  side: 'front',
  amps: Array.from({ length: PIECE_SAMPLES }, (_, i) => i / 8),
});

/** The other pieces, all of them acknowledged; the stroke is left open. */
async function sayPieces({ link, key }: Stream): Promise<void> {
  for (let seq = 1; seq < PIECES; seq++) link.say(piece(key, seq));
  for (let seq = 1; seq < PIECES; seq++) await link.next('ack');
}

/** On another link, as the first may have been closed for its silence by now. Fails where the stroke is not stored. */
async function end(fleet: BenchFleet, { link, key }: Stream, place: number): Promise<void> {
  link.socket.close();
  const again = await openLink(fleet.url, fleet.logger);
  again.say(beginning(fleet, key, place));
  await again.next('resume');
  again.say({ type: 'end', key });
  await again.next('stored');
  again.socket.close();
}

/** As many strokes as one request may hold, and as near to 32 MiB as they come. */
function largestBatch({ rooms }: BenchFleet, place: number): Buffer {
  const random = randomNumbers(13 + place);
  const strokes: string[] = [];
  let bytes = 2;
  for (let i = 0; i < MOST_STROKES; i++) {
    const text = JSON.stringify(
      longer(syntheticStroke(rooms[i % rooms.length], place * MOST_STROKES + i, random)),
    );
    if (bytes + text.length + 1 > BATCH_BYTES) break;
    bytes += text.length + 1;
    strokes.push(text);
  }
  const body = `[${strokes.join(',')}`;
  // Spaces make up the rest: the limit holds for the bytes.
  return Buffer.from(`${body.padEnd(BATCH_BYTES - 1)}]`);
}

/** Four times as long, so that 500 of them are some 32 MiB of numbers. */
function longer(stroke: ReturnType<typeof syntheticStroke>) {
  const sides = stroke.sides.map((side) => ({ ...side, amps: Array(4).fill(side.amps).flat() }));
  return { ...stroke, sides };
}
