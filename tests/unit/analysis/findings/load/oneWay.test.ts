import { expect, test } from 'vitest';
import { changed } from '../../support/contexts.ts';
import { type Folded, foldAll } from '../../support/folded.ts';
import { ONE_MOTOR, ROOM } from '../../support/handMade.ts';
import { directionOf, strokeEvents } from '../../support/strokeEvents.ts';

const FROM = 30;
const UNTIL = 60;

interface OneWay {
  /** What the running current of every retract from `FROM` to `UNTIL` is multiplied by, and of every extend. */
  readonly retract: number;
  readonly extend: number;
  readonly longer: number;
  /** Whether a rest tells the sensor's zero. */
  readonly knowsZero: boolean;
}

/** A room whose temperature nobody records, with retracts that differ for a while. */
function room({ retract, extend, longer, knowsZero }: OneWay, lost: readonly number[] = []): Folded {
  const events = strokeEvents(90, ONE_MOTOR, 4, () => ({ ambientC: null })).map((event, i) =>
    changed(event, {
      all: (measured, direction) => {
        const times = i < FROM || i >= UNTIL ? 1 : direction === 'retract' ? retract : extend;
        const slower = i < FROM || i >= UNTIL || direction === 'extend' ? 1 : longer;
        return {
          runningAmps: times * measured.runningAmps,
          runningAmpsP90: times * measured.runningAmpsP90,
          chargeAs: times * slower * measured.chargeAs,
          durationS: slower * measured.durationS,
          profile: measured.profile.map((amps) => (amps === null ? null : times * amps)),
          offsetAmps: knowsZero ? measured.offsetAmps : null,
        };
      },
    }),
  );
  return foldAll(
    ONE_MOTOR,
    events.filter((_, i) => !lost.includes(i)),
  );
}

test.each([
  { name: 'much', retract: 1.6, extend: 1, longer: 1.2, knowsZero: true },
  { name: 'by a third', retract: 1.35, extend: 1, longer: 1.1, knowsZero: true },
  { name: 'by a quarter', retract: 1.25, extend: 1, longer: 1.08, knowsZero: true },
  { name: 'by a fifth', retract: 1.2, extend: 1, longer: 1.06, knowsZero: true },
  {
    name: 'by a quarter, while the other way runs easier',
    retract: 1.25,
    extend: 0.96,
    longer: 1.08,
    knowsZero: true,
  },
  {
    name: 'much, where no rest tells the zero, as it takes longer',
    retract: 1.6,
    extend: 1,
    longer: 1.2,
    knowsZero: false,
  },
])('a room that drags going in alone is said, with its direction, until it is mended: $name', (row) => {
  const { warnings } = room(row);
  expect(warnings.map(({ kind, direction, side }) => [kind, direction, side])).toEqual([
    ['rising-draw', 'retract', 'main'],
  ]);
  const [{ firstStrokeId, clearedAtMs, evidence, headline }] = warnings;
  expect(Number(firstStrokeId.slice(-6)) - FROM).toBeLessThanOrEqual(7);
  expect(Math.abs(Number(evidence.risePercent) / 100 / (row.retract - 1) - 1)).toBeLessThan(0.25);
  expect(headline).toContain('going in');
  expect(clearedAtMs).not.toBeNull();
});

test('what one direction draws more goes on while that one does, though strokes of it were lost', () => {
  const row = { retract: 1.25, extend: 1, longer: 1.08, knowsZero: true };
  const { warnings } = room(row, [45, 47]);
  expect(warnings.map(({ kind, direction }) => [kind, direction])).toEqual([['rising-draw', 'retract']]);
  expect(warnings[0].clearedAtMs).toBeGreaterThan(strokeEvents(UNTIL, ONE_MOTOR, 4)[UNTIL - 1].atMs);
});

test.each([
  {
    name: 'a sensor whose zero moved, where no rest tells it',
    retract: 1.3,
    extend: 0.7,
    longer: 1,
    knowsZero: false,
  },
  { name: 'ground that slopes', retract: 1.2, extend: 0.85, longer: 1, knowsZero: true },
])('what goes up going in and down going out is no drag: $name', (row) => {
  expect(room(row).warnings.filter(({ kind }) => kind === 'rising-draw')).toEqual([]);
});

test.each(['extend', 'retract'] as const)(
  'a side that comes late going one way alone (%s) is said, and over once that way is as ever',
  (way) => {
    const isLate = (i: number) => i >= FROM && i < UNTIL && directionOf(i) === way;
    const events = strokeEvents(90, ROOM, 4, (i) => (isLate(i) ? { lagS: 1.6 } : {}));
    const { warnings } = foldAll(ROOM, events);
    expect(warnings.map(({ kind, side }) => [kind, side])).toEqual([['late-side', 'rear']]);
    const strokeAt = (atMs: number | null) => events.findIndex((event) => event.atMs === atMs);
    expect(strokeAt(warnings[0].openedAtMs) - FROM).toBeLessThanOrEqual(6);
    expect(strokeAt(warnings[0].clearedAtMs) - UNTIL).toBeGreaterThanOrEqual(0);
    expect(strokeAt(warnings[0].clearedAtMs) - UNTIL).toBeLessThanOrEqual(5);
  },
);

test('load that moves from one side to the other going out alone is said as that, and goes on being said', () => {
  const events = strokeEvents(90, ROOM, 4, (i) =>
    i >= FROM && directionOf(i) === 'extend' ? { factors: [1.35, 0.7] } : {},
  );
  const { warnings } = foldAll(ROOM, events);
  expect(warnings.map(({ kind, side, clearedAtMs }) => [kind, side, clearedAtMs])).toEqual([
    ['uneven-sides', 'front', null],
  ]);
});
