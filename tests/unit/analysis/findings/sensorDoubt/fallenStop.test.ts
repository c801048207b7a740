import { expect, test } from 'vitest';
import { stopFell } from '../../../../../analysis/findings/sensorDoubt/fallenStop.ts';
import { type Change, contextsAfterLearning } from '../../support/contexts.ts';

/** Whether the stall of either side is held to have fallen, on a stroke on which the front side is so changed. */
function fell(change: Change): Record<'front' | 'rear', boolean> {
  const [context] = contextsAfterLearning(1, () => ({ front: change }));
  return { front: stopFell(context, 'front'), rear: stopFell(context, 'rear') };
}

const halved: Change = ({ endStopAmps }) => ({ endStopAmps: endStopAmps === null ? null : endStopAmps / 2 });

test('a stall that reads half of what it did on a side that runs as ever fell, and that of the other side did not', () => {
  expect(fell(halved)).toEqual({ front: true, rear: false });
});

const OTHER_CAUSES: readonly { readonly name: string; readonly more: Change }[] = [
  {
    name: 'in a room that takes longer as well: a bad contact',
    more: ({ durationS }) => ({ durationS: 1.1 * durationS }),
  },
  {
    name: 'with the running current: a scale',
    more: ({ runningAmps }) => ({ runningAmps: runningAmps / 2 }),
  },
  {
    name: 'by no more than a supply takes',
    more: ({ endStopAmps }) => ({ endStopAmps: 0.9 * (endStopAmps ?? 0) }),
  },
  { name: 'out of the record altogether', more: () => ({ endStopAmps: null }) },
];

test.each(OTHER_CAUSES)('one that fell $name tells of no sensor', ({ more }) => {
  expect(fell((side, direction) => ({ ...halved(side, direction), ...more(side, direction) }))).toEqual({
    front: false,
    rear: false,
  });
});
