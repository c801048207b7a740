import { expect, test } from 'vitest';
import { Random } from '../../../../../server/demo/simulator/random.ts';
import { changed } from '../../support/contexts.ts';
import { foldAll } from '../../support/folded.ts';
import { ROOM } from '../../support/handMade.ts';
import { strokeEvents } from '../../support/strokeEvents.ts';

const FROM = 60;
const STROKES = 90;
/** What the stalls of both sides rise by: 25 degrees of frost, or a supply that nobody recorded. */
const STALL = 1.098;
const STALL_SPREAD = 0.02;
const SEEDS = [0, 1, 2, 3, 4, 5, 6, 7];

/** Strokes from the first with other loads to the one that said a rise, and the side it named; null: none was said. */
function saidAfter(seed: number, factors: readonly number[]) {
  const random = new Random(seed);
  const told = (i: number) => ({ ambientC: null, factors: i < FROM ? [1, 1] : factors });
  const events = strokeEvents(STROKES, ROOM, seed, told).map((event, i) => {
    const amps = () => 30 * (i < FROM ? 1 : STALL) * Math.exp(random.normal(0, STALL_SPREAD));
    return changed(event, { all: () => ({ endStopAmps: amps() }) });
  });
  const [said] = foldAll(ROOM, events).warnings;
  if (said === undefined) return null;
  const strokes = Number(said.firstStrokeId.replace('stroke-', '')) - FROM + 1;
  return { kind: said.kind, side: said.side, strokes };
}

test('stalls that rose with both sides are no cold that hides what one side draws more', () => {
  const said = SEEDS.map((seed) => saidAfter(seed, [1, 1.2]));
  expect(said.map((each) => [each?.kind, each?.side])).toEqual(SEEDS.map(() => ['rising-draw', 'rear']));
  expect(said.filter((each) => (each?.strokes ?? STROKES) <= 4).length).toBeGreaterThanOrEqual(6);
});

test('cold that adds more to one side than to the other calls nobody', () => {
  expect(SEEDS.map((seed) => saidAfter(seed, [1.05, 1.1]))).toEqual(SEEDS.map(() => null));
});
