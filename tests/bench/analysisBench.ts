import { measureStroke } from '../../analysis/measureStroke.ts';
import type { StrokeAnalysis } from '../../analysis/measures.ts';
import { advanceRoom, beginRoom, type RoomState } from '../../analysis/room/fold.ts';
import type { RoomDescription } from '../../analysis/trace.ts';
import { decodeStrokes } from '../../ingest/json/strokes.ts';
import { type IncomingStroke, toStrokeTrace } from '../../ingest/stroke.ts';
import { strokeId } from '../../ingest/strokeId.ts';
import { randomNumbers, syntheticStroke } from './syntheticStroke.ts';
import type { Line } from './table.ts';

const STROKES = 200;
const ROUNDS = 12;
/** In a row, so that the pass finds its samples in the cache: the strictest measure. */
const PASSES = 20;
const ROOM_ID = '018f4d5e-0000-7000-8000-000000000000';
const ROOM: RoomDescription = {
  drive: 'in-wall',
  sides: ['front', 'rear'],
  travelMetres: null,
  gearTeeth: null,
  rackPitchMm: null,
  ratedAmps: null,
  nominalVolts: 12,
  positiveDirection: 'extend',
};

/** The cost of one stroke, all measures and all detectors, in plain passes over its samples. */
export function analysisBench(): Line[] {
  const random = randomNumbers(3);
  const texts = Array.from({ length: STROKES }, (_, i) =>
    JSON.stringify(syntheticStroke(ROOM_ID, i, random)),
  );
  const bodies = texts.map((text): unknown => JSON.parse(text));
  const strokes = bodies.flatMap((body) => decodeStrokes(body).flatMap(({ stroke }) => stroke ?? []));
  const analyses = strokes.map(measure);
  const ids = strokes.map(({ key, startedAtMs }) => strokeId(ROOM_ID, key, startedAtMs));
  const judge = () => {
    const state = beginRoom(ROOM_ID, ROOM);
    return (i: number) =>
      advanceRoom(state, {
        type: 'stroke',
        strokeId: ids[i],
        atMs: strokes[i].startedAtMs,
        direction: strokes[i].direction,
        ambientC: null,
        excluded: false,
        analysis: analyses[i],
      });
  };
  const early = oneMore(analyses, FEW_STROKES);
  const late = oneMore(analyses, MANY_STROKES);
  const [passes, measuring, judging, reading, checking, amongFew, amongMany] = quickest([
    () => (i) => {
      for (let n = 0; n < PASSES; n++) plainPass(strokes[i]);
    },
    () => (i) => measure(strokes[i]),
    judge,
    () => (i) => JSON.parse(texts[i]),
    () => (i) => decodeStrokes(bodies[i]),
    () => early,
    () => late,
  ]);
  const pass = passes / PASSES;
  return [
    { what: 'plain pass over the samples, µs', ratio: (1000 * pass) / STROKES, aim: '' },
    { what: 'measures and detectors, ms', ratio: (measuring + judging) / STROKES, aim: '<= 1' },
    { what: 'measures and detectors to a plain pass', ratio: (measuring + judging) / pass, aim: '<= 300' },
    { what: '  of that the measures', ratio: measuring / pass, aim: '' },
    { what: '  of that the detectors and baselines', ratio: judging / pass, aim: '' },
    {
      what: `one more stroke after ${MANY_STROKES} to one after ${FEW_STROKES}`,
      ratio: amongMany / amongFew,
      aim: '<= 1.1',
    },
    {
      what: 'checking a body and filling typed arrays to parsing it',
      ratio: checking / reading,
      aim: '<= 0.1',
    },
  ];
}

const FEW_STROKES = 100;
const MANY_STROKES = 10_000;
const HOURS_APART = 60;

/** Takes one more stroke into a room that has seen so many, from the state as it is stored and back to that. */
function oneMore(analyses: readonly StrokeAnalysis[], seen: number): (i: number) => void {
  const advance = (state: RoomState, index: number) =>
    advanceRoom(state, {
      type: 'stroke',
      strokeId: `stroke ${String(index).padStart(9, '0')}`,
      atMs: index * HOURS_APART * 3_600_000,
      direction: null,
      ambientC: null,
      excluded: false,
      analysis: analyses[index % analyses.length],
    });
  const state = beginRoom(ROOM_ID, ROOM);
  for (let index = 0; index < seen; index++) advance(state, index);
  const stored = JSON.stringify(state);
  return () => {
    const restored: RoomState = JSON.parse(stored);
    advance(restored, seen);
    JSON.stringify(restored);
  };
}

function measure(stroke: IncomingStroke) {
  return measureStroke(toStrokeTrace(stroke, stroke.direction), ROOM);
}

function plainPass(stroke: IncomingStroke): number {
  let sum = 0;
  for (const { amps } of stroke.sides) for (let i = 0; i < amps.length; i++) sum += amps[i];
  return sum;
}

/**
 * Milliseconds that each work takes for all strokes in the quickest round of every single stroke, as most rounds of a
 * shared machine are disturbed; the works take turns. Each begins a round with what is new in it.
 */
function quickest(works: readonly (() => (stroke: number) => unknown)[]): number[] {
  const least = works.map(() => new Float64Array(STROKES).fill(Number.POSITIVE_INFINITY));
  for (let round = 0; round < ROUNDS; round++) {
    for (const [w, begin] of works.entries()) {
      const work = begin();
      for (let i = 0; i < STROKES; i++) {
        const started = performance.now();
        work(i);
        least[w][i] = Math.min(least[w][i], performance.now() - started);
      }
    }
  }
  return least.map((ofStrokes) => ofStrokes.reduce((sum, milliseconds) => sum + milliseconds, 0));
}
