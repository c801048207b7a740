import { expect, test } from 'vitest';
import type { StrokeToMeasure } from '../../../server/work/measuring/measureMessages.ts';
import { MeasuringInPieces } from '../../../server/work/measuring/measuringInPieces.ts';

const ROOM = {
  drive: 'other',
  sides: ['main'],
  gearTeeth: null,
  rackPitchMm: null,
  ratedAmps: null,
  nominalVolts: 12,
  positiveDirection: 'extend',
  travelMetres: null,
} as const;

/** Only told apart: the thread below does not look into them. */
function strokesNamed(names: readonly number[]): StrokeToMeasure[] {
  return names.map((name) => ({
    recorded: { sides: [], supply: null, ambientC: name },
    direction: null,
    room: ROOM,
  }));
}

/** Answers each piece when the test says so. */
class HeldThread {
  isReady = true;
  readonly waiting = 0;
  readonly pieces: number[][] = [];
  readonly #ends: (() => void)[] = [];

  async measure(strokes: readonly StrokeToMeasure[]): Promise<readonly (string | null)[]> {
    const names = strokes.map(({ recorded }) => recorded.ambientC ?? -1);
    this.pieces.push(names);
    await new Promise<void>((end) => this.#ends.push(end));
    return names.map((name) => `stroke ${name}`);
  }

  async endNext(): Promise<void> {
    this.#ends.shift()?.();
    await new Promise(setImmediate);
  }

  async stop(): Promise<void> {}
}

const upTo = (count: number) => Array.from({ length: count }, (_, i) => i);

test('two pieces are on their way at once, and the answers come in the order of the strokes', async () => {
  const thread = new HeldThread();
  const inPieces = new MeasuringInPieces(thread);
  const measured = inPieces.measure(strokesNamed(upTo(20)));
  await new Promise(setImmediate);
  expect(thread.pieces.map((piece) => piece.length)).toEqual([8, 8]);
  await thread.endNext();
  expect(thread.pieces.map((piece) => piece.length)).toEqual([8, 8, 4]);
  await thread.endNext();
  await thread.endNext();
  expect(await measured).toEqual(upTo(20).map((name) => `stroke ${name}`));
});

test('there is room for a thousand and some, and again once they are measured', async () => {
  const thread = new HeldThread();
  const inPieces = new MeasuringInPieces(thread);
  expect(inPieces.room).toBe(1024);
  const measured = inPieces.measure(strokesNamed(upTo(1000)));
  expect(inPieces.room).toBe(24);
  await new Promise(setImmediate);
  for (let ended = 0; ended < 125; ended++) await thread.endNext();
  await measured;
  expect(inPieces.room).toBe(1024);
});

test('a thread that dies meanwhile keeps nobody waiting: what is left is to be measured later', async () => {
  const thread = new HeldThread();
  const inPieces = new MeasuringInPieces(thread);
  const measured = inPieces.measure(strokesNamed(upTo(24)));
  await new Promise(setImmediate);
  thread.isReady = false;
  await thread.endNext();
  await thread.endNext();
  expect((await measured).map((analysis) => analysis === null)).toEqual(upTo(24).map((i) => i >= 16));
  expect(inPieces.room).toBe(1024);
});
