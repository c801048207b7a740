import { expect, test } from 'vitest';
import { endedAlone } from '../../../../../analysis/findings/droppedLoad/endedAlone.ts';
import { type Change, type Changes, contextsAfterLearning } from '../../support/contexts.ts';

/** The part of its time after which a side ends. */
const PART = 0.6;

/** Ends on its way, and draws nothing from there on. */
const ends: Change = ({ durationS, phases }) => ({
  durationS: PART * durationS,
  endStopAmps: null,
  phases: { ...phases, endS: phases.startS + PART * (phases.endS - phases.startS), endStopStartS: null },
});

/** What is told of the front side on one stroke of each direction. */
function told(changes: Changes) {
  return contextsAfterLearning(2, () => changes).map((context) => ({
    direction: context.direction,
    dropped: endedAlone(context, 'front'),
  }));
}

test('a side that ends on its way while the other goes on did not drive the rest of the travel', () => {
  for (const { direction, dropped } of told({ front: ends })) {
    const [from, to] = direction === 'extend' ? [PART, 1] : [0, 1 - PART];
    expect(dropped?.side).toBe('front');
    expect(dropped?.from).toBeCloseTo(from, 1);
    expect(dropped?.to).toBeCloseTo(to, 1);
  }
});

test.each([
  { name: 'that stalled there: something holds it', changes: { front: stalls } },
  { name: 'with the other side: somebody let go of the switch', changes: { all: ends } },
  { name: 'hardly sooner than it does', changes: { front: alittle } },
])('a side that ends on its way $name did not lose its load', ({ changes }) => {
  expect(told(changes).map(({ dropped }) => dropped)).toEqual([null, null]);
});

function stalls(...[side, direction]: Parameters<Change>): ReturnType<Change> {
  return { ...ends(side, direction), endStopAmps: 2 * side.runningAmps };
}

function alittle({ durationS }: Parameters<Change>[0]): ReturnType<Change> {
  return { durationS: 0.9 * durationS, endStopAmps: null };
}
