import { expect, test } from 'vitest';
import type { StrokeEvent } from '../../../../../analysis/history.ts';
import { measureStroke } from '../../../../../analysis/measureStroke.ts';
import { changed } from '../../support/contexts.ts';
import { type Folded, foldAll } from '../../support/folded.ts';
import { ONE_MOTOR, ROOM, sideOf, traceOf } from '../../support/handMade.ts';
import { directionOf, strokeEvents } from '../../support/strokeEvents.ts';

const BEFORE = 30;

/** Strokes whose sides were read with the sign that `signOf` gives for each, by index. */
function room(count: number, signOf: (index: number, side: string) => 1 | -1, of = ROOM): Folded {
  const events = strokeEvents(count, of, 6).map((event, i): StrokeEvent => {
    const sides = Object.fromEntries(of.sides.map((side) => [side, () => ({ sign: signOf(i, side) })]));
    return changed(event, sides);
  });
  return foldAll(of, events);
}

/** As a logger with a sign reads: positive out, negative in. */
const plain = (i: number): 1 | -1 => (directionOf(i) === 'extend' ? 1 : -1);
const turned = (i: number): 1 | -1 => (plain(i) === 1 ? -1 : 1);

test('a clamp that is put on the other way round is said of its side at the third stroke, and moves no normal', () => {
  const folded = room(BEFORE + 8, (i, side) => (i >= BEFORE && side === 'rear' ? turned(i) : plain(i)));
  expect(folded.warnings).toMatchObject([
    { kind: 'sensor-doubt', side: 'rear', severity: 'watch', evidence: { doubt: 'reversed' } },
  ]);
  expect(folded.judgements.findIndex(({ warnings }) => warnings.length > 0)).toBe(BEFORE + 2);
  const expectedOf = ({ judgements }: Folded) =>
    judgements.at(-1)?.expectations.map(({ expected }) => expected);
  expect(expectedOf(folded)).toEqual(expectedOf(room(BEFORE + 8, plain)));
});

test('a logger that was swapped for one that reads all sides the other way is one warning, of no side', () => {
  const { warnings } = room(BEFORE + 8, (i) => (i >= BEFORE ? turned(i) : plain(i)));
  expect(warnings).toMatchObject([{ kind: 'sensor-doubt', side: null, evidence: { doubt: 'reversed' } }]);
  expect(warnings[0].headline).not.toContain('clock');
});

test('a room with one side is told by its name, and it is over once the clamp is right again', () => {
  const { warnings } = room(
    BEFORE + 16,
    (i) => (i >= BEFORE && i < BEFORE + 8 ? turned(i) : plain(i)),
    ONE_MOTOR,
  );
  expect(warnings.map(({ side, clearedAtMs }) => [side, clearedAtMs !== null])).toEqual([['main', true]]);
});

test('what goes on reading the other way is how it reads from then on', () => {
  const { warnings } = room(BEFORE + 40, (i) => (i >= BEFORE ? turned(i) : plain(i)));
  expect(warnings.map(({ clearedAtMs }) => clearedAtMs !== null)).toEqual([true]);
});

test.each([
  { name: 'sends no sign any more', after: () => 1 as const },
  { name: 'sends a sign now', before: () => 1 as const, after: plain },
  { name: 'never sent one', before: () => 1 as const, after: () => 1 as const },
  { name: 'was put on the other way from the first', before: turned, after: turned },
  { name: 'is wrong once', after: (i: number) => (i === BEFORE + 3 ? turned(i) : plain(i)) },
])('a logger that $name is no trouble', ({ before = plain, after }) => {
  expect(room(BEFORE + 12, (i) => (i < BEFORE ? before(i) : after(i))).warnings).toEqual([]);
});

test('the sign is that of the record, whatever its direction was said to be', () => {
  for (const sign of [1, -1] as const)
    for (const direction of ['extend', 'retract'] as const) {
      const analysis = measureStroke(traceOf([sideOf('main', { sign })], direction), ONE_MOTOR);
      expect(analysis).toMatchObject({ status: 'done', direction, sides: { main: { sign } } });
    }
});
