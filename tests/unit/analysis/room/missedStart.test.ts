import { expect, test } from 'vitest';
import { hasMissedStart } from '../../../../analysis/room/missedStart.ts';

type Start = NonNullable<Parameters<typeof hasMissedStart>[1]>;

const RUNNING_AMPS = 6;

/** A start whose inrush is expected at so many amperes, and lies so far off it, in limits of a stroke. */
function start(expected: number, limitsOff: number): Start {
  // What the baseline says besides is not asked for here.
  return { expected, residual: 0.5 * limitsOff, ownLimit: 0.5 } as Start;
}

test.each([
  {
    name: 'no higher than the load where starts stand out as a rule',
    inrushAmps: 7,
    start: start(24, -2),
    missed: true,
  },
  { name: 'low, but still a start', inrushAmps: 12, start: start(24, -2), missed: false },
  { name: 'no lower than it may be', inrushAmps: 7, start: start(24, -0.9), missed: false },
  {
    name: 'of a motor whose controller holds every start low',
    inrushAmps: 7,
    start: start(8, -2),
    missed: false,
  },
  { name: 'of a room that has no baseline yet', inrushAmps: 7, start: null, missed: false },
])('a start $name was missed: $missed', ({ inrushAmps, start: judged, missed }) => {
  expect(hasMissedStart({ inrushAmps, runningAmps: RUNNING_AMPS }, judged)).toBe(missed);
});
