import { expect, test } from 'vitest';
import type { StrokeEvent } from '../../../../analysis/history.ts';
import { changed } from '../support/contexts.ts';
import { type Folded, foldAll } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { strokeEvents } from '../support/strokeEvents.ts';

const BEFORE = 40;
const AFTER = 40;

/**
 * A room whose controller cuts off so soon after the stop: 200 samples a second see how high the stall is, ten read what
 * chance has it.
 */
function loggerSwapped(heldS: number): Folded {
  const events = strokeEvents(BEFORE + AFTER, ROOM, 6, () => ({ volts: null })).map(
    (event, i): StrokeEvent => {
      const slow = i >= BEFORE;
      return changed(event, {
        all: ({ endStopAmps, phases, inrushAmps }) => ({
          rateHz: slow ? 10 : 200,
          inrushAmps: (slow ? 0.3 : 1) * inrushAmps,
          endStopAmps: (endStopAmps ?? 0) * (slow ? 0.72 : 1),
          phases: { ...phases, endS: (phases.endStopStartS ?? 0) + heldS },
        }),
      });
    },
  );
  return foldAll(ROOM, events);
}

const expectedStop = ({ judgements }: Folded, stroke: number) =>
  judgements[stroke].expectations.find(({ measure }) => measure === 'endStopAmps')?.expected ?? null;

test('a stall that is let go within a sample or two is read anew once the logger is slower, and says nothing meanwhile', () => {
  const folded = loggerSwapped(0.2);
  expect(folded.warnings).toEqual([]);
  expect(expectedStop(folded, BEFORE - 1)).toBeGreaterThan(36);
  expect(expectedStop(folded, BEFORE + 1)).toBeNull();
  expect(Math.abs((expectedStop(folded, BEFORE + AFTER - 1) ?? 0) - 0.72 * 38)).toBeLessThan(2);
});

test('one that is held for a second is read as well by a slow logger, and keeps its normal', () => {
  const folded = loggerSwapped(1);
  expect(expectedStop(folded, BEFORE + 1)).toBeGreaterThan(36);
});
