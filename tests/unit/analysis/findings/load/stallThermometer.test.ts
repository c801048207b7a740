import { expect, test } from 'vitest';
import { Random } from '../../../../../server/demo/simulator/random.ts';
import { changed } from '../../support/contexts.ts';
import { foldAll } from '../../support/folded.ts';
import { ROOM } from '../../support/handMade.ts';
import { strokeEvents } from '../../support/strokeEvents.ts';

/** One motor alone, whose temperature nobody records. */
const ALONE = { ...ROOM, sides: ['main'] };
const FROM = 60;
const STROKES = 90;
const STALL_AMPS = 30;
const SEEDS = Array.from({ length: 16 }, (_, seed) => seed);

/** `running` and `stall`: how many times as much both are from some stroke on; `spread`: of stalls, natural logarithm. */
interface Rise {
  readonly running: number;
  readonly stall: number;
  readonly spread: number;
}

/** Strokes from the first that rose to the one that said it; null: none did. */
function strokesUntilSaid(seed: number, { running, stall, spread }: Rise): number | null {
  const random = new Random(seed);
  const told = (i: number) => ({ ambientC: null, factors: [i < FROM ? 1 : running] });
  const events = strokeEvents(STROKES, ALONE, seed, told).map((event, i) => {
    const amps = STALL_AMPS * (i < FROM ? 1 : stall) * Math.exp(random.normal(0, spread));
    return changed(event, { main: () => ({ endStopAmps: amps }) });
  });
  const at = foldAll(ALONE, events).judgements.findIndex(({ warnings }) =>
    warnings.some(({ kind }) => kind === 'rising-draw'),
  );
  return at < 0 ? null : at - FROM + 1;
}

test('stalls that read now more, now less are no cold that hides a rise of 15 %', () => {
  const rise = { running: 1.15, stall: 1, spread: 0.05 };
  const strokes = SEEDS.map((seed) => strokesUntilSaid(seed, rise) ?? STROKES);
  expect(strokes.filter((each) => each <= 4).length).toBeGreaterThanOrEqual(10);
  // A few wait longer: half a month of strokes may be one spell of weather.
  expect(strokes.filter((each) => each <= 6).length).toBeGreaterThanOrEqual(14);
});

test('25 degrees of frost that comes at once and stays is told by stalls that read well, all but a few times', () => {
  const frost = { running: 1.125, stall: 1.098, spread: 0.02 };
  const said = SEEDS.filter((seed) => strokesUntilSaid(seed, frost) !== null);
  expect(said.length).toBeLessThanOrEqual(4);
});
