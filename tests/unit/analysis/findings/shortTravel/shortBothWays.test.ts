import { expect, test } from 'vitest';
import type { StrokeEvent } from '../../../../../analysis/history.ts';
import type { SideMeasures } from '../../../../../analysis/measures.ts';
import type { Direction } from '../../../../../analysis/trace.ts';
import { changed } from '../../support/contexts.ts';
import { cutCourse } from '../../support/courseBy.ts';
import { foldAll } from '../../support/folded.ts';
import { ONE_MOTOR } from '../../support/handMade.ts';
import { directionOf, strokeEvents } from '../../support/strokeEvents.ts';

const STROKES = 80;
const FROM = 40;
/** Ohms and volts of a motor that stalls at 40 A on 12 V. */
const OHMS = 0.3;
const VOLTS = 12;

/** What the motor reads on so many volts over a part of its travel: ω = (V − I·R)/Ke, stalled V/R. */
const runsOn =
  (volts: number, part: number, stops: boolean, way: Direction, ohms = OHMS) =>
  (measured: SideMeasures): Partial<SideMeasures> => ({
    durationS:
      (part * measured.durationS * (VOLTS - measured.runningAmps * OHMS)) /
      (volts - measured.runningAmps * ohms),
    profile: cutCourse(measured, part, way),
    endStopAmps: stops ? volts / ohms : null,
    inrushAmps: volts / ohms,
  });

interface Cut {
  /** Which way the room ends early; the way back is as short. */
  readonly way: Direction;
  readonly part: number;
  /** What the supply nobody records is worth from the second stay of it on. */
  readonly weaker?: number;
  readonly stops?: (index: number) => boolean;
}

function room({ way, part, weaker = 1, stops = () => true }: Cut): StrokeEvent[] {
  const from = FROM + (directionOf(FROM) === way ? 0 : 1);
  return strokeEvents(STROKES, ONE_MOTOR, 4, () => ({ volts: null, ambientC: 20 })).map((event, i) => {
    const stay = Math.floor(i / 2);
    const volts = VOLTS * (1 + 0.03 * Math.sin(2.3 * stay)) * (i > from + 2 ? weaker : 1);
    return changed(event, { all: runsOn(volts, i < from ? 1 : part, stops(i), way) });
  });
}

const saidOf = (events: StrokeEvent[]) => {
  const { warnings } = foldAll(ONE_MOTOR, events);
  return warnings.map(({ kind, direction, firstStrokeId }) => ({
    kind,
    direction,
    after: Number(firstStrokeId.slice(-6)) - FROM,
  }));
};

test.each([
  { way: 'extend', part: 0.88 },
  { way: 'retract', part: 0.88, weaker: 0.92 },
  { way: 'retract', part: 0.9, weaker: 0.95 },
  { way: 'retract', part: 0.88 },
] as const)(
  'a travel that ends early going one way ($way), the way back as short, is said of that one',
  (cut) => {
    const said = saidOf(room(cut));
    expect(said.map(({ kind, direction }) => [kind, direction])).toEqual([['short-travel', cut.way]]);
    expect(said[0].after).toBeLessThan(10);
  },
);

/** Volts that nobody records, another lot for each way: the way back is now quicker and now slower for them. */
const VOLTS_BACK = [12.9, 12.8, 11.6, 12.7, 11.7, 12.8, 12.9, 11.8];

test.each(['extend', 'retract'] as const)(
  'the way that was short first (%s) is the one that ends early, though the way back is now and then the shorter in time',
  (way) => {
    const from = FROM + (directionOf(FROM) === way ? 0 : 1);
    const events = strokeEvents(STROKES, ONE_MOTOR, 4, () => ({ volts: null, ambientC: 20 })).map(
      (event, i) => {
        const isBack = directionOf(i) !== way;
        const volts = i < from ? 12.1 + 0.4 * Math.sin(2.3 * i) : isBack ? VOLTS_BACK[i % 8] : 11.9;
        return changed(event, {
          all: (measured) => ({
            ...runsOn(volts, i < from ? 1 : 0.6, false, way)(measured),
            // Neither a start nor a course tells anything.
            inrushAmps: 1.2 * measured.runningAmps,
            profile: measured.profile.map(() => measured.runningAmps),
          }),
        });
      },
    );
    expect(saidOf(events).map(({ kind, direction }) => [kind, direction])).toEqual([['short-travel', way]]);
  },
);

test.each([3, 5])(
  'a way back that is let go once before its stop (%d strokes on) is still the way back',
  (after) => {
    const stops = (i: number) => i !== FROM + after;
    const said = saidOf(room({ way: 'retract', part: 0.86, weaker: 0.95, stops: (i) => stops(i + 1) }));
    expect(said.map(({ kind, direction }) => [kind, direction])).toEqual([['short-travel', 'retract']]);
  },
);

test('a contact that goes bad within one stroke makes the turns fewer both ways, and calls nobody', () => {
  const events = strokeEvents(STROKES, ONE_MOTOR, 4, () => ({ volts: null, ambientC: 20 })).map(
    (event, i) => {
      const volts = VOLTS * (1 + 0.03 * Math.sin(2.3 * Math.floor(i / 2)));
      return changed(event, { all: runsOn(volts, 1, true, 'extend', i < FROM ? OHMS : 1.12 * OHMS) });
    },
  );
  expect(saidOf(events)).toEqual([]);
});

test('it lasts while the motor makes as few turns, also on some weak stays that would take the usual time', () => {
  const weak = (stay: number) => (stay >= 26 && stay < 30 ? 0.85 : 1);
  const from = FROM;
  const events = strokeEvents(STROKES, ONE_MOTOR, 4, () => ({ volts: null, ambientC: 20 })).map(
    (event, i) => {
      const stay = Math.floor(i / 2);
      const volts = VOLTS * (1 + 0.03 * Math.sin(2.3 * stay)) * weak(stay);
      return changed(event, { all: runsOn(volts, i < from ? 1 : 0.89, true, 'extend') });
    },
  );
  const { warnings } = foldAll(ONE_MOTOR, events);
  expect(warnings.map(({ kind, clearedAtMs }) => [kind, clearedAtMs])).toEqual([['short-travel', null]]);
});
