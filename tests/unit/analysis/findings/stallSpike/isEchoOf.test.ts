import { expect, test } from 'vitest';
import { jumpTogether } from '../../../../../analysis/findings/stallSpike/jumpTogether.ts';
import type { SpikedStroke } from '../../../../../analysis/findings/stallSpike/spikeMemory.ts';
import type { SideMeasures } from '../../../../../analysis/measures.ts';
import { changed } from '../../support/contexts.ts';
import { foldAll } from '../../support/folded.ts';
import { ROOM } from '../../support/handMade.ts';
import { strokeEvents } from '../../support/strokeEvents.ts';

const LEARNT = 30;
const STROKES = 40;
/** Of the room's gear, which turns once per tenth of its travel. */
const TURNS = [0.15, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85];
const ANYWHERE = [
  [0.2, 0.71],
  [0.35, 0.52],
  [0.3, 0.62, 0.8],
  [0.15, 0.44],
];

const peaks = (places: readonly number[], height: number) => (side: SideMeasures) => ({
  spikes: places.map((position) => ({ position, amps: (1 + height) * side.runningAmps, widthS: 0.3 })),
});

interface Jolts {
  readonly of: (index: number) => readonly number[];
  readonly height: (index: number) => number;
}

/** The sides that peaks were said of, of a room with peaks of both sides once it had learnt its normal. */
function saidOf(front: Jolts, rear: Jolts) {
  const events = strokeEvents(LEARNT + STROKES, ROOM, 4).map((event, index) => {
    const i = index - LEARNT;
    if (i < 0) return event;
    return changed(event, {
      front: peaks(front.of(i), front.height(i)),
      rear: peaks(rear.of(i), rear.height(i)),
    });
  });
  return foldAll(ROOM, events).warnings.map(({ side }) => side);
}

test.each([
  { name: 'once per turn', of: () => TURNS },
  { name: 'here and there', of: (i: number) => ANYWHERE[i % ANYWHERE.length] },
  { name: 'at one place', of: () => [0.4] },
])('a side that jumps $name where the other jumps about twice as high is not told of', ({ of }) => {
  const rear = { of, height: (i: number) => (Math.floor(i / 8) % 2 === 0 ? 0.36 : 0.25) };
  expect(saidOf({ of, height: () => 0.6 }, rear)).toEqual(['front']);
});

test('a side that jumps elsewhere than the other is told of, however much lower', () => {
  const rear = { of: (i: number) => ANYWHERE[(i + 2) % ANYWHERE.length], height: () => 0.36 };
  const said = saidOf({ of: (i) => ANYWHERE[i % ANYWHERE.length], height: () => 0.6 }, rear);
  expect(said.sort()).toEqual(['front', 'rear']);
});

const stroke = (...positions: number[]): SpikedStroke => ({
  direction: 'extend',
  positions,
  unsure: 0,
  heights: positions.map(() => 0.5),
  swing: null,
  stillRises: false,
});

test('teeth of two gears jump together where they catch at one phase of the turn, whichever turns show it', () => {
  const others = [stroke(0.3, 0.5), stroke(0.5, 0.9), stroke(0.3, 0.7)];
  const inPhase = [stroke(0.69), stroke(0.1, 0.31), stroke(0.91)];
  const outOfPhase = [stroke(0.8), stroke(0.2, 0.4), stroke(0.6)];
  expect(jumpTogether(inPhase, others, 0.2)).toBe(true);
  expect(jumpTogether(outOfPhase, others, 0.2)).toBe(false);
  expect(jumpTogether(inPhase, others, null)).toBe(false);
  expect(jumpTogether(inPhase, others.slice(1), 0.2)).toBe(false);
});
