import { expect, test } from 'vitest';
import { stallFollowsSupply } from '../../../../analysis/baseline/stallFollowsSupply.ts';
import { coldAllowance } from '../../../../analysis/findings/unseen.ts';
import { contextOf } from '../../../../analysis/room/context.ts';
import { judgeStroke } from '../../../../analysis/room/judgeStroke.ts';
import { channelOf } from '../../../../analysis/roomState.ts';
import { changed } from '../support/contexts.ts';
import { foldAll } from '../support/folded.ts';
import { ONE_MOTOR } from '../support/handMade.ts';
import { strokeEvents } from '../support/strokeEvents.ts';

const STROKES = 40;
/** Of some stays, parts of 12.6 V. */
const SUPPLIES = [1, 1.05, 0.96, 1.02, 0.94];
const supplyOf = (i: number) => SUPPLIES[Math.floor(i / 4) % SUPPLIES.length];

/** A room on these supplies whose way ends at V/R, or at what a clutch holds. */
function roomOf({ clutch, isRecorded, isSteady = false }: Ends) {
  const events = strokeEvents(STROKES, ONE_MOTOR, 3, (i) => ({
    volts: isRecorded ? 12.6 * (isSteady ? 1 + (i % 5) / 500 : supplyOf(i)) : null,
    ambientC: null,
  })).map((event, i) =>
    changed(event, {
      all: ({ durationS, inrushAmps, endStopAmps }) => ({
        durationS: isRecorded ? durationS : durationS / supplyOf(i),
        inrushAmps: isRecorded ? inrushAmps : inrushAmps * supplyOf(i),
        endStopAmps: clutch ? 30 + (i % 3) / 20 : (endStopAmps ?? 0) * (isRecorded ? 1 : supplyOf(i)),
      }),
    }),
  );
  return { ...foldAll(ONE_MOTOR, events), last: events[events.length - 1] };
}

interface Ends {
  readonly clutch: boolean;
  readonly isRecorded: boolean;
  /** From a converter, whose supply moves by a tenth of a volt only. */
  readonly isSteady?: boolean;
}

test.each([
  { clutch: false, isRecorded: true },
  { clutch: false, isRecorded: false },
  { clutch: true, isRecorded: true },
  { clutch: true, isRecorded: false },
])('an end is told from one that a clutch holds: %o', ({ clutch, isRecorded }) => {
  const { state } = roomOf({ clutch, isRecorded });
  for (const way of ['extend', 'retract'] as const)
    expect(stallFollowsSupply(channelOf(state, 'main', way))).toBe(!clutch);
});

test('an end that is the same on each stroke is held, also where the supply moves too little to tell a slope', () => {
  const { state } = roomOf({ clutch: true, isRecorded: true, isSteady: true });
  for (const way of ['extend', 'retract'] as const)
    expect(stallFollowsSupply(channelOf(state, 'main', way))).toBe(false);
});

test.each([
  { name: 'at V/R tells how cold it is', clutch: false, tells: true },
  { name: 'held by a clutch tells of no cold', clutch: true, tells: false },
])('where nobody recorded the temperature an end $name', ({ clutch, tells }) => {
  const { state, last } = roomOf({ clutch, isRecorded: false });
  const { analysis } = last;
  if (analysis.status !== 'done') throw new TypeError('a stroke that can be used is expected here');
  const context = contextOf(state, last, analysis, judgeStroke(state, last, analysis));
  expect(coldAllowance(context) !== null).toBe(tells);
});
