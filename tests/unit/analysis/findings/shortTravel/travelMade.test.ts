import { expect, test } from 'vitest';
import { travelMade } from '../../../../../analysis/findings/shortTravel/travelMade.ts';
import type { StrokeEvent } from '../../../../../analysis/history.ts';
import type { SideMeasures } from '../../../../../analysis/measures.ts';
import { turnsAs } from '../../../../../analysis/motor/turns.ts';
import type { Warning, WarningKind } from '../../../../../analysis/warning.ts';
import { changed, contextsAfterLearning } from '../../support/contexts.ts';
import { cutCourse } from '../../support/courseBy.ts';
import { ONE_MOTOR } from '../../support/handMade.ts';
import { saidOf } from '../../support/saidOf.ts';
import { directionOf, strokeEvents } from '../../support/strokeEvents.ts';

const FROM = 40;
const STROKES = 80;

/** Ohms and volts of a motor that stalls at 40 A on 12 V. */
const OHMS = 0.3;
const VOLTS = 12;

interface Run {
  readonly volts: number;
  readonly ohms?: number;
  readonly part?: number;
}

/** What a motor of so many ohms reads on so many volts, over the first part of its usual travel out: ω = (V − I·R)/Ke, stalled V/R. */
function runsOn({ volts, ohms = OHMS, part = 1 }: Run) {
  return (measured: SideMeasures): Partial<SideMeasures> => ({
    durationS:
      (part * measured.durationS * (VOLTS - measured.runningAmps * OHMS)) /
      (volts - measured.runningAmps * ohms),
    profile: cutCourse(measured, part, 'extend'),
    endStopAmps: volts / ohms,
    inrushAmps: volts / ohms,
  });
}

/** Every stay has a supply of its own, which nobody records. */
const supplyOf = (index: number): number => VOLTS * (1 + 0.07 * Math.sin(2.3 * Math.floor(index / 2)));

/** `of`: volts, ohms and the part of the travel of a stroke from the fault's first on. */
function room(
  ambientC: number | null,
  of: (index: number) => Run,
  always: Partial<SideMeasures> = {},
): StrokeEvent[] {
  return strokeEvents(STROKES, ONE_MOTOR, 4, () => ({ volts: null, ambientC })).map((event, i) =>
    changed(event, {
      all: (measured) => ({
        ...runsOn(i < FROM ? { volts: supplyOf(i) } : of(i))(measured),
        ...always,
      }),
    }),
  );
}

const cutBy = (part: number) => (i: number) => ({
  volts: supplyOf(i),
  part: directionOf(i) === 'extend' ? part : 1,
});

test('the turns of a motor are the same on any supply and under any load, and fewer by what the travel is', () => {
  const read = (volts: number, part: number, runningAmps: number) => {
    const measured = { runningAmps, durationS: 20, endStopAmps: null, inrushAmps: 0 };
    const moving = { ...measured, durationS: (20 * part * 9) / (volts - runningAmps * OHMS) };
    return turnsAs({ ...moving, endStopAmps: volts / OHMS }) ?? Number.NaN;
  };
  const whole = read(12, 1, 8);
  expect(read(10.5, 1, 8)).toBeCloseTo(whole, 6);
  expect(read(12, 1, 14)).toBeCloseTo(whole, 6);
  expect(read(13.5, 0.9, 11)).toBeCloseTo(0.9 * whole, 6);
  const switchedOff = { runningAmps: 8, durationS: 20, endStopAmps: 11.5, inrushAmps: 40 };
  expect(turnsAs(switchedOff)).toBeNull();
});

test.each([
  { name: 'at the stop, the temperature known', ambientC: 20, always: {} },
  { name: 'at the stop, the temperature not known', ambientC: null, always: {} },
  { name: 'at the start, where the room comes to no stop', ambientC: 20, always: { endStopAmps: null } },
])(
  'a travel cut by an eighth is told by the turns of a motor whose current at standstill is read $name',
  ({ ambientC, always }) => {
    expect(saidOf(room(ambientC, cutBy(0.875), always))).toEqual([['short-travel', 'extend']]);
  },
);

test.each([
  { name: 'every supply that it has had before', of: cutBy(1) },
  {
    name: 'a weaker one than ever, which slows it',
    of: (i: number) => ({ volts: 0.85 * supplyOf(i) }),
  },
  {
    name: 'a bad contact, which lowers the stall and hardly slows it',
    of: (i: number) => ({ volts: supplyOf(i), ohms: 1.12 * OHMS }),
  },
])('a room that goes all the way on $name calls nobody', ({ of }) => {
  expect(saidOf(room(20, of))).toEqual([]);
});

test('a clamp that comes to read less makes fewer turns, but no shorter travel', () => {
  const events = room(20, cutBy(1)).map((event, i) =>
    i < FROM
      ? event
      : changed(event, {
          all: ({ runningAmps, inrushAmps, endStopAmps, profile }) => ({
            runningAmps: 0.88 * runningAmps,
            inrushAmps: 0.88 * inrushAmps,
            endStopAmps: endStopAmps === null ? null : 0.88 * endStopAmps,
            profile: profile.map((amps) => (amps === null ? null : 0.88 * amps)),
          }),
        }),
  );
  expect(saidOf(events).filter(([kind]) => kind === 'short-travel')).toEqual([]);
});

test('a rate that is told wrongly is told by the turns, whatever the supply of the day', () => {
  const events = room(20, (i) => ({ volts: supplyOf(i) })).map((event, i) =>
    i < FROM ? event : changed(event, { all: ({ durationS }) => ({ durationS: 0.78 * durationS }) }),
  );
  expect(saidOf(events)).toEqual([['sensor-doubt', null]]);
});

test('a current at standstill that fell alone, as if there were fewer turns, speaks against no clock', () => {
  const events = room(20, (i) => ({ volts: supplyOf(i) })).map((event, i) => {
    const part = i < FROM ? 1 : 0.8;
    return changed(event, {
      all: ({ endStopAmps, inrushAmps }) => ({
        endStopAmps: part * (endStopAmps ?? 0),
        inrushAmps: part * inrushAmps,
      }),
    });
  });
  expect(saidOf(events)).toEqual([]);
});

test('a motor that lost some of its field makes its turns for fewer ampere-seconds, and ends no travel early', () => {
  const field = 0.84;
  const weakened = ({ runningAmps, runningAmpsP90, durationS, endStopAmps }: SideMeasures) => {
    const volts = (endStopAmps ?? 0) * OHMS;
    const slowedBy = (volts - runningAmps * OHMS) / (volts - (runningAmps / field) * OHMS);
    return {
      runningAmps: runningAmps / field,
      runningAmpsP90: runningAmpsP90 / field,
      durationS: field * slowedBy * durationS,
      // A clamp that is read so coarsely that no course is left to tell by.
      profile: Array<number>(64).fill(runningAmps / field),
    };
  };
  const events = room(20, (i) => ({ volts: supplyOf(i) })).map((event, i) =>
    i < FROM ? event : changed(event, { all: weakened }),
  );
  expect(saidOf(events).map(([kind]) => kind)).toEqual(['rising-draw']);
});

test('no turns are counted of a side that draws more, and none where the sides share their load otherwise', () => {
  /** A supply that differs from stroke to stroke, by what the start reads. */
  const ofTheDay = (measured: SideMeasures) =>
    runsOn({ volts: VOLTS * (measured.inrushAmps / 40) ** 2 })(measured);
  const [context] = contextsAfterLearning(1, () => ({}), { volts: null }, { all: ofTheDay });
  const madeUnder = (kind: WarningKind, side: string | null) => {
    const open: Warning = {
      id: 'some',
      kind,
      side,
      severity: 'watch',
      direction: null,
      position: null,
      pattern: null,
      openedAtMs: 0,
      clearedAtMs: null,
      firstStrokeId: 'first',
      latestStrokeId: 'latest',
      headline: '',
      evidence: {},
      checks: [],
      cautions: [],
    };
    return travelMade({ ...context, state: { ...context.state, open: [open] } });
  };
  expect(madeUnder('stall-spike', 'front')?.by).toBe('turns');
  const bySide = (side: string) => context.residual(side, 'turnsAs');
  expect(madeUnder('rising-draw', 'front')).toMatchObject({ by: 'turns', judged: bySide('rear') });
  expect(madeUnder('rising-draw', 'rear')).toMatchObject({ by: 'turns', judged: bySide('front') });
  expect(madeUnder('rising-draw', null)?.by).toBe('blind');
  expect(madeUnder('uneven-sides', 'front')?.by).toBe('blind');
});
