import { expect, test } from 'vitest';
import { orderEvents } from '../../../../../analysis/room/fold.ts';
import { changed } from '../../support/contexts.ts';
import { foldAll } from '../../support/folded.ts';
import { ONE_MOTOR, ROOM } from '../../support/handMade.ts';
import { directionOf, serviceEvent, strokeEvents } from '../../support/strokeEvents.ts';

const FROM = 40;

/** Ways out that end early but for one run of three whole ones in thirty: three of five do. */
const IS_SHORT = '110110010101011010001101011010';

/** A room whose ways out from `FROM` on end a fifth early where `isShort` has it so, by their count. */
const shortNowAndThen = (strokes: number, isShort: (way: number) => boolean) =>
  strokeEvents(strokes, ONE_MOTOR, 4).map((event, i) =>
    i >= FROM && directionOf(i) === 'extend' && isShort((i - FROM) / 2)
      ? changed(event, { all: ({ durationS }) => ({ durationS: 0.8 * durationS }) })
      : event,
  );

test('what stops three ways of five is said once: three whole ones in a row are not its end', () => {
  const events = shortNowAndThen(FROM + 2 * IS_SHORT.length, (way) => IS_SHORT[way] === '1');
  const { warnings } = foldAll(ONE_MOTOR, events);
  expect(warnings).toMatchObject([{ kind: 'short-travel', direction: 'extend', clearedAtMs: null }]);
});

test('after work that ended it fewer whole ways are enough, however it came and went', () => {
  const worked = FROM + 2 * IS_SHORT.length;
  const events = shortNowAndThen(worked + 12, (way) => IS_SHORT[way] === '1');
  const told = [...events, serviceEvent(worked, 'other')].sort(orderEvents);
  const { warnings } = foldAll(ONE_MOTOR, told);
  expect(warnings).toMatchObject([{ kind: 'short-travel', clearedAtMs: expect.any(Number) }]);
});

/** A way in, taken in a part of its time against a stall as ever, after starts that are higher by a factor. */
const quickWayIn = (start: number) => {
  const events = strokeEvents(FROM + 2, ROOM, 4, () => ({ volts: null })).map((event, i) =>
    i === FROM + 1
      ? changed(event, {
          all: ({ durationS, inrushAmps, profile }) => ({
            durationS: 0.8 * durationS,
            inrushAmps: start * inrushAmps,
            profile: profile.map((_, bin) => profile[Math.floor(profile.length - 0.8 * (64 - bin))]),
          }),
        })
      : event,
  );
  return foldAll(ROOM, events).warnings.map(({ kind }) => kind);
};

test('one quick way is not said by itself where the starts tell of a charger that nobody recorded', () => {
  expect(quickWayIn(1)).toEqual(['short-travel']);
  expect(quickWayIn(1.15)).toEqual([]);
});

test.each(ROOM.sides)('a room that runs quicker since work on its side %s calls nobody', (side) => {
  const events = strokeEvents(FROM + 60, ROOM, 4).map((event, i) =>
    i < FROM ? event : changed(event, { all: ({ durationS }) => ({ durationS: 0.88 * durationS }) }),
  );
  const told = [...events, serviceEvent(FROM, 'adjusted', side)].sort(orderEvents);
  const { warnings, state } = foldAll(ROOM, told);
  expect(warnings).toEqual([]);
  expect(state.travel.extend.latest.at(-1)?.part).toBeCloseTo(1, 1);
});
