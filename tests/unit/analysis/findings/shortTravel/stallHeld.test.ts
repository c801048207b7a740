import { expect, test } from 'vitest';
import { isLetGo, noteHeld } from '../../../../../analysis/findings/shortTravel/stallHeld.ts';
import { beginTravelMemory } from '../../../../../analysis/findings/shortTravel/travelMemory.ts';
import type { StrokeEvent } from '../../../../../analysis/history.ts';
import type { DoneAnalysis, SideMeasures } from '../../../../../analysis/measures.ts';
import { Random } from '../../../../../server/demo/simulator/random.ts';
import { changed, contextsAfterLearning } from '../../support/contexts.ts';
import { cutCourse } from '../../support/courseBy.ts';
import { ONE_MOTOR } from '../../support/handMade.ts';
import { saidOf } from '../../support/saidOf.ts';
import { directionOf, strokeEvents } from '../../support/strokeEvents.ts';

const FROM = 36;
const STROKES = 100;
/** A motor that meets its stop comes to a stand in some tenths of a second. */
const STANDS_S = 0.09;

/** What a stall reads that is let go after so long: the current still rises from what the motor ran on. */
const letGoAfter =
  (heldS: number, volts = 1, part = 1) =>
  (measured: SideMeasures): Partial<SideMeasures> => {
    const { runningAmps, durationS, endStopAmps, inrushAmps, phases } = measured;
    const standstill = volts * (endStopAmps ?? 0);
    const takesS = (part * durationS) / volts;
    return {
      inrushAmps: volts * inrushAmps,
      durationS: takesS,
      profile: cutCourse(measured, part, 'extend'),
      endStopAmps: standstill - (standstill - runningAmps) * Math.exp(-heldS / STANDS_S),
      phases: { ...phases, endStopStartS: 1 + takesS, endS: 1 + takesS + heldS },
    };
  };

/** Nobody records the supply, and whoever holds the switch lets go sooner now and then, often after stroke `FROM`. */
function room(partOf: (index: number) => number): StrokeEvent[] {
  const random = new Random(77);
  return strokeEvents(STROKES, ONE_MOTOR, 4, () => ({ volts: null, ambientC: 20 })).map((event, i) => {
    const soon = random.chance(i < FROM ? 0.1 : 0.4);
    const heldS = soon ? random.uniform(0.07, 0.15) : random.uniform(0.35, 0.6);
    const volts = 1 + 0.03 * Math.sin(2.3 * Math.floor(i / 2));
    return changed(event, { all: letGoAfter(heldS, volts, partOf(i)) });
  });
}

test('whole strokes whose stall is let go before the motor stands still call nobody', () => {
  expect(saidOf(room(() => 1))).toEqual([]);
});

test('a travel cut by an eighth is said though every other stall is let go too soon', () => {
  const cut = room((i) => (i >= FROM && directionOf(i) === 'extend' ? 0.875 : 1));
  expect(saidOf(cut)).toEqual([['short-travel', 'extend']]);
});

test.each([
  { name: 'held as long as ever', heldS: 0.5, reads: 0.85, is: false },
  { name: 'let go sooner, and reads as much', heldS: 0.2, reads: 1.02, is: false },
  { name: 'let go sooner, and reads less', heldS: 0.2, reads: 0.85, is: true },
])('a stall that is $name is no standstill: $is', ({ heldS, reads, is }) => {
  const [{ analysis, residual }] = contextsAfterLearning(1, () => ({
    all: ({ endStopAmps, phases }) => ({
      endStopAmps: reads * (endStopAmps ?? 0),
      phases: { ...phases, endS: (phases.endStopStartS ?? 0) + heldS },
    }),
  }));
  const { extend } = beginTravelMemory();
  const held = (seconds: number): DoneAnalysis => ({
    ...analysis,
    sides: Object.fromEntries(
      Object.entries(analysis.sides).map(([side, measured]) => {
        const endStopStartS = 20;
        return [
          side,
          { ...measured, phases: { ...measured.phases, endStopStartS, endS: endStopStartS + seconds } },
        ];
      }),
    ),
  });
  const endStop = residual('front', 'endStopAmps');
  expect(isLetGo(extend, analysis, 'front', endStop)).toBe(false);
  for (const seconds of [0.45, 0.5, 0.6]) noteHeld(extend, held(seconds));
  expect(isLetGo(extend, analysis, 'front', endStop)).toBe(is);
});
