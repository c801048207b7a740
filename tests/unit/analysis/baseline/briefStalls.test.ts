import { expect, test } from 'vitest';
import type { StrokeEvent } from '../../../../analysis/history.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { changed } from '../support/contexts.ts';
import { type Folded, foldAll } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { strokeEvents } from '../support/strokeEvents.ts';

const BEFORE = 40;
const AFTER = 40;

/** Of a slow record: how much of the stall this stroke happened to read. */
type ReadPart = (stroke: number) => number;

/**
 * A room whose controller cuts off so soon after the stop: 200 samples a second see how high the stall is, ten read a part of
 * it. Its logger is slow from stroke `slowFrom` on.
 */
function loggerSwapped(heldS: number, part: ReadPart, slowFrom = BEFORE): Folded {
  const events = strokeEvents(BEFORE + AFTER, ROOM, 6, () => ({ volts: null })).map(
    (event, i): StrokeEvent => {
      const slow = i >= slowFrom;
      return changed(event, {
        all: ({ endStopAmps, phases, inrushAmps }) => ({
          rateHz: slow ? 10 : 200,
          inrushAmps: (slow ? 0.3 : 1) * inrushAmps,
          endStopAmps: (endStopAmps ?? 0) * (slow ? part(i) : 1),
          phases: { ...phases, endS: (phases.endStopStartS ?? 0) + heldS },
        }),
      });
    },
  );
  return foldAll(ROOM, events);
}

/** A sample falls into the stall, or only on its way there; the first strokes of a slow logger happen to agree. */
function byChance(seed: number, slowFrom: number): ReadPart {
  const random = new Random(seed);
  const parts = Array.from({ length: BEFORE + AFTER }, () => (random.normal(0, 1) > 0.3 ? 0.5 : 1));
  return (stroke) => (stroke < slowFrom + 16 ? 1 : parts[stroke]);
}

const expectedStop = ({ judgements }: Folded, stroke: number) =>
  judgements[stroke].expectations.find(({ measure }) => measure === 'endStopAmps')?.expected ?? null;

test.each([
  { name: 'once the logger is slower', slowFrom: BEFORE },
  { name: 'of a logger that was slow from the first', slowFrom: 0 },
])(
  'a stall that is let go within a sample or two is left to chance, and tells nothing, $name',
  ({ slowFrom }) => {
    for (const seed of [1, 2, 3]) {
      const folded = loggerSwapped(0.2, byChance(seed, slowFrom), slowFrom);
      expect(folded.warnings).toEqual([]);
      if (slowFrom > 0) expect(expectedStop(folded, slowFrom - 1)).toBeGreaterThan(36);
      for (let stroke = slowFrom; stroke < BEFORE + AFTER; stroke++)
        expect(expectedStop(folded, stroke)).toBeNull();
    }
  },
);

test('one that is held for a second is read as well by a slow logger, and keeps its normal', () => {
  const folded = loggerSwapped(1, () => 1);
  expect(expectedStop(folded, BEFORE + 1)).toBeGreaterThan(36);
});
