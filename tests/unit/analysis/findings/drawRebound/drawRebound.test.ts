import { expect, test } from 'vitest';
import { orderEvents } from '../../../../../analysis/room/fold.ts';
import { foldAll } from '../../support/folded.ts';
import { ROOM } from '../../support/handMade.ts';
import { serviceEvent, strokeEvents } from '../../support/strokeEvents.ts';

const WORK = 40;
/** Strokes after the work in which a climb may be laid to it. */
const A_YEAR = 60;

/** The draw against the usual one: eased by the work, then climbing so much a stroke until `lasts` strokes after it. */
function roomWith(lasts: number, strokes: number) {
  const level = (i: number) => {
    const since = i - WORK;
    if (since < 0) return 1;
    return since < lasts ? 0.85 + 0.012 * Math.min(since, 30) : 0.85;
  };
  const events = strokeEvents(WORK + strokes, ROOM, 11, (i) => ({ factors: [level(i), level(i)] }));
  return foldAll(ROOM, [...events, serviceEvent(WORK - 1, 'lubricated')].sort(orderEvents)).state.open.map(
    ({ kind }) => kind,
  );
}

test('a draw that fell with the work and climbs back is said, and goes on being said', () => {
  expect(roomWith(Number.POSITIVE_INFINITY, 30)).toContain('draw-rebound');
  expect(roomWith(Number.POSITIVE_INFINITY, A_YEAR + 30)).toContain('draw-rebound');
});

test('a draw that was high from the first stroke on fell with the work, also where that came just after the learning', () => {
  const work = 18;
  const factor = (i: number) => (i < work ? 1.25 : Math.min(1.25, 1 + 0.025 * (i - work)));
  const events = strokeEvents(work + 14, ROOM, 11, (i) => ({ factors: [factor(i), factor(i)] }));
  const { warnings } = foldAll(ROOM, [...events, serviceEvent(work, 'lubricated')].sort(orderEvents));
  expect(warnings.map(({ kind, side, clearedAtMs }) => [kind, side, clearedAtMs])).toEqual([
    ['draw-rebound', null, null],
  ]);
});

test('a climb that takes all of its sixty strokes to come back is first a rise, and then what it came to be', () => {
  const factor = (i: number) => (i < WORK ? 1 : 0.85 * 1.0027 ** (i - WORK));
  const events = strokeEvents(WORK + 80, ROOM, 11, (i) => ({ factors: [factor(i), factor(i)] }));
  const { warnings } = foldAll(ROOM, [...events, serviceEvent(WORK, 'lubricated')].sort(orderEvents));
  const rise = { kind: 'rising-draw', clearedAtMs: warnings[1]?.openedAtMs };
  expect(warnings).toMatchObject([rise, { kind: 'draw-rebound', clearedAtMs: null }]);
});

test('it is over once the draw has come down again, however long after the work', () => {
  expect(roomWith(A_YEAR + 20, A_YEAR + 19)).toContain('draw-rebound');
  expect(roomWith(A_YEAR + 20, A_YEAR + 30)).not.toContain('draw-rebound');
});

test('a step far above what the work had taken off, long after it, stays the rise that it was said to be', () => {
  const factor = (i: number) => (i < WORK ? 1 : i < WORK + 38 ? 0.93 : 1.2);
  const events = strokeEvents(WORK + 90, ROOM, 11, (i) => ({ factors: [factor(i), factor(i)] }));
  const { warnings } = foldAll(ROOM, [...events, serviceEvent(WORK, 'lubricated')].sort(orderEvents));
  expect(warnings.map(({ kind, clearedAtMs }) => [kind, clearedAtMs])).toEqual([['rising-draw', null]]);
});

test('a step soon after the work is a rise of its own, said at once, and no climb', () => {
  const factor = (i: number) => (i < 20 ? 1 : i < WORK ? 1.25 : i < WORK + 10 ? 1 : 1.25);
  const events = strokeEvents(WORK + 60, ROOM, 11, (i) => ({ factors: [factor(i), factor(i)] }));
  const { warnings } = foldAll(ROOM, [...events, serviceEvent(WORK, 'lubricated')].sort(orderEvents));
  expect(warnings.map(({ kind, clearedAtMs }) => [kind, clearedAtMs !== null])).toEqual([
    ['rising-draw', true],
    ['rising-draw', false],
  ]);
  expect(warnings[1].openedAtMs).toBeLessThanOrEqual(events[WORK + 15].atMs);
});

test('work on one side says nothing of a rise of the other', () => {
  const events = strokeEvents(WORK + 60, ROOM, 11, (i) => ({
    factors: [i >= 20 && i < WORK ? 1.25 : 1, i < WORK + 6 ? 1 : Math.min(1.3, 1 + 0.02 * (i - WORK - 6))],
  }));
  const work = serviceEvent(WORK, 'lubricated', ROOM.sides[0]);
  const { warnings } = foldAll(ROOM, [...events, work].sort(orderEvents));
  expect(warnings.map(({ kind, side, clearedAtMs }) => [kind, side, clearedAtMs !== null])).toEqual([
    ['rising-draw', ROOM.sides[0], true],
    ['rising-draw', ROOM.sides[1], false],
  ]);
});

test('what comes back on one side alone after work on both is said of that side, and as nothing else', () => {
  const back = (i: number) => (i < WORK ? 1 : Math.min(1.1, 0.78 + 0.005 * (i - WORK)));
  const events = strokeEvents(WORK + 60, ROOM, 11, (i) => ({ factors: [1, back(i)] }));
  const { warnings } = foldAll(ROOM, [...events, serviceEvent(WORK, 'lubricated')].sort(orderEvents));
  expect(warnings.map(({ kind, side, clearedAtMs }) => [kind, side, clearedAtMs])).toEqual([
    ['draw-rebound', ROOM.sides[1], null],
  ]);
  expect(warnings[0].headline).toContain(ROOM.sides[1]);
});

test('a side that only takes load from the other after the work is none that comes back', () => {
  const taken = (i: number) => (i < WORK ? 0 : Math.min(0.25, 0.008 * (i - WORK)));
  const events = strokeEvents(WORK + 60, ROOM, 11, (i) => ({
    factors: i < WORK ? [1, 1] : [0.85 + taken(i), 0.85 - taken(i)],
  }));
  const { warnings } = foldAll(ROOM, [...events, serviceEvent(WORK, 'lubricated')].sort(orderEvents));
  expect(warnings.map(({ kind }) => kind)).not.toContain('draw-rebound');
});

test('a climb that has not come back to where it was before the work is none of its own, however slow', () => {
  const level = (i: number) => (i < WORK ? 1 : Math.min(1.1, 0.7 + 0.006 * (i - WORK)));
  const events = strokeEvents(WORK + 60, ROOM, 11, (i) => ({
    factors: [level(i), level(i)],
    ambientC: null,
  }));
  const { warnings } = foldAll(ROOM, [...events, serviceEvent(WORK, 'lubricated')].sort(orderEvents));
  expect(warnings.map(({ kind }) => kind)).toEqual(['draw-rebound']);
});

test('a climb that comes to rest at the line between two severities is not told now as the one and now as the other', () => {
  const level = (i: number) => (i < WORK ? 1 : Math.min(1, 0.8 + 0.008 * (i - WORK)));
  const swing = (i: number) => 1 + 0.035 * Math.sin(i / 6);
  const events = strokeEvents(WORK + 140, ROOM, 11, (i) => ({
    factors: [level(i) * swing(i), level(i) * swing(i)],
  }));
  const { judgements } = foldAll(ROOM, [...events, serviceEvent(WORK, 'lubricated')].sort(orderEvents));
  const told = judgements.flatMap(({ warnings }) => warnings.map(({ severity }) => severity));
  expect([...told].sort((a, b) => Number(a === 'service') - Number(b === 'service'))).toEqual(told);
  expect(new Set(told)).toEqual(new Set(['watch', 'service']));
});
