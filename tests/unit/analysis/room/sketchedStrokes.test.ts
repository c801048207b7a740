import { expect, test } from 'vitest';
import type { Direction } from '../../../../analysis/trace.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { playHistory, type ToldEvent } from '../../../detection/playFleet.ts';
import { ROOM } from '../support/handMade.ts';

/**
 * Strokes as somebody would sketch them first: an inrush that dies away, a level that swings a little over the time of the
 * stroke, the stall. Whatever is not told stays as it was, which no real room would do.
 */
interface Sketch {
  readonly lastsS: number;
  readonly stallAmps: number;
  readonly volts: number;
}

const USUAL: Sketch = { lastsS: 20, stallAmps: 14, volts: 12.6 };
const NO_STALL = { stallAmps: 6 };
const RATE_HZ = 50;
const REST_S = 0.5;

function sketched(
  pair: number,
  direction: Direction,
  changes: Partial<Sketch>,
  knowsVolts: boolean,
): ToldEvent {
  const { lastsS, stallAmps, volts } = { ...USUAL, ...changes };
  const index = 2 * pair + (direction === 'extend' ? 0 : 1);
  const random = new Random(100 + index);
  const ampsAt = (seconds: number): number => {
    if (seconds < 0 || seconds >= lastsS) return random.normal(0, 0.02);
    if (seconds > lastsS - 0.4) return stallAmps;
    const course = 6 + 0.3 * Math.sin((6 * seconds) / lastsS);
    return course + 12 * Math.exp(-seconds / 0.15) + random.normal(0, 0.15);
  };
  const samples = Math.round((lastsS + 2 * REST_S) * RATE_HZ);
  return {
    type: 'stroke',
    index,
    stroke: {
      direction,
      startedAt: new Date(Date.UTC(2026, 2, 1 + pair, direction === 'extend' ? 9 : 16)).toISOString(),
      sides: ROOM.sides.map((side) => ({
        side,
        rateHz: RATE_HZ,
        amps: Array.from({ length: samples }, (_, i) => ampsAt(i / RATE_HZ - REST_S)),
      })),
      ...(knowsVolts
        ? { supply: { rateHz: 10, volts: Array.from({ length: Math.ceil(lastsS * 10) + 10 }, () => volts) } }
        : {}),
      ambientC: 20,
    },
  };
}

const HEALTHY = 10;
const AFTER = 8;

/** What is said of ten healthy pairs of strokes and some more, of which each direction may be another; null: none of it. */
function saidOf(extend: Partial<Sketch> | null, retract: Partial<Sketch> | null, knowsVolts = true) {
  const events = Array.from({ length: HEALTHY + AFTER }, (_, pair) =>
    (['extend', 'retract'] as const).flatMap((direction) => {
      const changes = pair < HEALTHY ? {} : direction === 'extend' ? extend : retract;
      return changes === null ? [] : [sketched(pair, direction, changes, knowsVolts)];
    }),
  ).flat();
  const { warnings } = playHistory(ROOM, events);
  return warnings.map(({ warning: { kind, direction, side, headline } }) => ({
    kind,
    direction,
    side,
    headline,
  }));
}

interface ShortCase {
  readonly name: string;
  readonly extend: Partial<Sketch>;
  readonly retract: Partial<Sketch> | null;
  readonly way: Direction;
}

test.each<ShortCase>([
  {
    name: 'out, three tenths, without a stall',
    extend: { lastsS: 14, ...NO_STALL },
    retract: {},
    way: 'extend',
  },
  { name: 'out, three tenths, stalled', extend: { lastsS: 14 }, retract: {}, way: 'extend' },
  {
    name: 'out, a seventh, without a stall',
    extend: { lastsS: 17, ...NO_STALL },
    retract: {},
    way: 'extend',
  },
  { name: 'out, where none came back', extend: { lastsS: 14, ...NO_STALL }, retract: null, way: 'extend' },
  {
    name: 'in, three tenths, without a stall',
    extend: {},
    retract: { lastsS: 14, ...NO_STALL },
    way: 'retract',
  },
  { name: 'in, three tenths, stalled', extend: {}, retract: { lastsS: 14 }, way: 'retract' },
])('strokes that are short going $name are said of that direction', ({ extend, retract, way }) => {
  const said = saidOf(extend, retract);
  expect(said.map(({ kind, direction, side }) => [kind, direction, side])).toEqual([
    ['short-travel', way, null],
  ]);
  const isStalled = (way === 'extend' ? extend : retract)?.stallAmps === undefined;
  expect(said[0].headline.includes('stalls')).toBe(isStalled);
});

test.each([
  { name: 'on a supply that was recorded', volts: true },
  { name: 'on a supply that nobody recorded', volts: false },
])('where both ways are squeezed alike the one that lost its stop ends early, $name', ({ volts }) => {
  const squeezed = { lastsS: 15 };
  const said = saidOf({ ...squeezed, ...NO_STALL }, squeezed, volts);
  expect(said.map(({ kind, direction }) => [kind, direction])).toEqual([['short-travel', 'extend']]);
  const both = saidOf({ ...squeezed, ...NO_STALL }, { ...squeezed, ...NO_STALL }, volts);
  expect([...new Set(both.map(({ kind }) => kind))]).toEqual(['short-travel']);
});

test('a weak supply alone holds back whatever else the times may say', () => {
  expect(saidOf({ volts: 10.2 }, { volts: 10.2 }).map(({ kind }) => kind)).toEqual(['weak-supply']);
});

test('healthy strokes call nobody', () => {
  expect(saidOf({}, {})).toEqual([]);
});
