import { expect, test } from 'vitest';
import {
  beginSpikeMemory,
  fewestScattered,
} from '../../../../../analysis/findings/stallSpike/spikeMemory.ts';
import { turnOf } from '../../../../../analysis/findings/stallSpike/turnOf.ts';
import { orderEvents } from '../../../../../analysis/room/fold.ts';
import { type Change, changed } from '../../support/contexts.ts';
import { foldAll } from '../../support/folded.ts';
import { ONE_MOTOR, ROOM } from '../../support/handMade.ts';
import { serviceEvent, strokeEvents } from '../../support/strokeEvents.ts';

const LEARNT = 30;
const TEETH_APART = [0, 1, 2, 3];

/** What is said last of a room with peaks at these places of each stroke, counted from when it had learnt its normal. */
function saidOf(strokes: number, placesOf: (index: number) => readonly number[]) {
  const events = strokeEvents(LEARNT + strokes, ONE_MOTOR, 4).map((event, i) => {
    if (i < LEARNT) return event;
    return changed(event, {
      all: ({ runningAmps }) => ({
        spikes: placesOf(i - LEARNT).map((position) => ({ position, amps: 1.5 * runningAmps, widthS: 0.3 })),
      }),
    });
  });
  return foldAll(ONE_MOTOR, events).warnings.map(({ kind, pattern, position }) => ({
    kind,
    pattern,
    position,
  }));
}

const peakAt =
  (position: number): Change =>
  ({ runningAmps }) => ({ spikes: [{ position, amps: 1.5 * runningAmps, widthS: 0.3 }] });

test('a place that was seen stays the place while peaks go on, though some come elsewhere', () => {
  const elsewhere = [0.2, 0.71, 0.35, 0.88, 0.14, 0.57];
  const said = saidOf(14, (i) => (i < 6 ? [0.42] : [elsewhere[i % elsewhere.length]]));
  expect(said).toEqual([{ kind: 'stall-spike', pattern: 'same-place', position: 0.42 }]);
});

test('peaks that stay away for six strokes now and then are one warning, and over after nine without', () => {
  const comes = (i: number) => i < 4 || (i >= 10 && i < 14) || (i >= 20 && i < 24);
  const told = (strokes: number) => {
    const events = strokeEvents(LEARNT + strokes, ONE_MOTOR, 4).map((event, i) =>
      i < LEARNT || !comes(i - LEARNT) ? event : changed(event, { all: peakAt(0.42) }),
    );
    return foldAll(ONE_MOTOR, events).warnings.map(({ clearedAtMs }) => clearedAtMs !== null);
  };
  expect(told(30)).toEqual([false]);
  expect(told(44)).toEqual([true]);
});

test.each([
  { name: 'still climbs there, too gently for a peak, it is not over', part: 0.16, cleared: [false] },
  { name: 'runs there as it used to, it is over', part: 0, cleared: [true] },
])('where a side that peaked at a place $name', ({ part, cleared }) => {
  const events = strokeEvents(LEARNT + 50, ONE_MOTOR, 4, (i) => ({
    bump: i < LEARNT ? null : { from: 0.41, to: 0.46, part: i < LEARNT + 8 ? 0.16 : part },
  })).map((event, i) => (i < LEARNT || i >= LEARNT + 8 ? event : changed(event, { all: peakAt(0.435) })));
  const said = foldAll(ONE_MOTOR, events).warnings.filter(({ kind }) => kind === 'stall-spike');
  expect(said.map(({ clearedAtMs }) => clearedAtMs !== null)).toEqual(cleared);
});

test('after fasteners were seated three strokes without a peak clear it, and it is not said anew for those before', () => {
  const work = LEARNT + 6;
  const strokes = strokeEvents(work + 10, ONE_MOTOR, 4).map((event, i) =>
    i < LEARNT || i >= work ? event : changed(event, { all: peakAt(0.42) }),
  );
  const events = [...strokes, serviceEvent(work, 'fasteners-seated', 'main')].sort(orderEvents);
  const { warnings } = foldAll(ONE_MOTOR, events);
  expect(warnings.map(({ clearedAtMs }) => strokes.findIndex(({ atMs }) => atMs === clearedAtMs))).toEqual([
    work + 2,
  ]);
});

test('what came anywhere at first and then at one place is told by that', () => {
  const first = [0.2, 0.71, 0.35, 0.88];
  const said = saidOf(16, (i) => [i < first.length ? first[i] : 0.42]);
  expect(said).toEqual([{ kind: 'stall-spike', pattern: 'same-place', position: 0.42 }]);
});

test('of teeth that were seen once per turn the one that still shows is no place of its own', () => {
  const teeth = TEETH_APART.map((turns) => 0.2 + turns * (turnOf(ONE_MOTOR) ?? Number.NaN));
  const said = saidOf(24, (i) => (i < 8 ? teeth : teeth.slice(0, 1)));
  expect(said).toEqual([{ kind: 'stall-spike', pattern: 'once-per-turn', position: null }]);
});

test.each([
  { name: 'half as much at the same place', gentler: 0.2, at: 0.43, sides: ['front'] },
  { name: 'two thirds as much at the same place', gentler: 0.33, at: 0.43, sides: ['front'] },
  { name: 'nearly as much at the same place', gentler: 0.45, at: 0.43, sides: [null] },
  { name: 'two thirds as much somewhere else', gentler: 0.33, at: 0.7, sides: ['front', 'rear'] },
  { name: 'half as much somewhere else', gentler: 0.2, at: 0.7, sides: ['front', 'rear'] },
])('a side that jumps by $name as the other is told or not', ({ gentler, at, sides }) => {
  const events = strokeEvents(LEARNT + 8, ROOM, 4).map((event, i) =>
    i < LEARNT
      ? event
      : changed(event, {
          front: (front) => ({ spikes: [{ position: 0.42, amps: 1.5 * front.runningAmps, widthS: 0.3 }] }),
          rear: (rear) => ({
            spikes: [{ position: at, amps: (1 + gentler) * rear.runningAmps, widthS: 0.3 }],
          }),
        }),
  );
  const said = foldAll(ROOM, events).warnings.filter(({ kind }) => kind === 'stall-spike');
  expect(said.map(({ side }) => side).sort()).toEqual(sides);
});

test('a low peak right after the start of one way alone is the end of that start; both ways it is a place', () => {
  const saidAt = (isThere: (way: string) => boolean) => {
    const events = strokeEvents(LEARNT + 16, ONE_MOTOR, 4).map((event, i) =>
      i < LEARNT
        ? event
        : changed(event, {
            all: ({ runningAmps }, way) => ({
              spikes: isThere(way) ? [{ position: 0.08, amps: 1.25 * runningAmps, widthS: 0.3 }] : [],
            }),
          }),
    );
    return foldAll(ONE_MOTOR, events).warnings.map(({ kind, pattern }) => [kind, pattern]);
  };
  expect(saidAt((way) => way === 'extend')).toEqual([]);
  expect(saidAt(() => true)).toEqual([['stall-spike', 'same-place']]);
});

test.each([
  { name: 'on a shorter way, in less time, is its own', length: 0.93, added: 0, said: [] },
  { name: 'with another one in it is new', length: 1, added: 0.12, said: ['once-per-turn'] },
])('a ripple $name', ({ length, added, said }) => {
  const room = { ...ONE_MOTOR, gearTeeth: null };
  const events = strokeEvents(LEARNT + 12, room, 4).map((event, i) => {
    const isLater = i >= LEARNT;
    const way = isLater ? length : 1;
    const wave = (x: number, cycles: number) => Math.sin(2 * Math.PI * cycles * x);
    const swing = (x: number) => 1 + 0.1 * wave(x, 8) + (isLater ? added * wave(x, 5) : 0);
    return changed(event, {
      all: ({ profile, durationS, chargeAs }) => ({
        durationS: way * durationS,
        chargeAs: way * chargeAs,
        profile: profile.map((amps, bin) => amps && amps * swing((way * (bin + 0.5)) / profile.length)),
      }),
    });
  });
  const found = foldAll(room, events).warnings.filter(({ kind }) => kind === 'stall-spike');
  expect(found.map(({ pattern }) => pattern)).toEqual(said);
});

test('a gentle swing with the turns of the gear stays said while it lasts, also while the room still learns', () => {
  const begins = 18;
  const turn = turnOf(ONE_MOTOR) ?? 1;
  const events = strokeEvents(begins + 80, ONE_MOTOR, 4).map((event, i) =>
    i < begins
      ? event
      : changed(event, {
          all: ({ profile }) => ({
            profile: profile.map(
              (amps, bin) =>
                amps && amps * (1 + 0.045 * Math.sin((2 * Math.PI * (bin + 0.5)) / profile.length / turn)),
            ),
          }),
        }),
  );
  const said = foldAll(ONE_MOTOR, events).warnings;
  expect(said.map(({ kind, pattern, clearedAtMs }) => [kind, pattern, clearedAtMs])).toEqual([
    ['stall-spike', 'once-per-turn', null],
  ]);
});

test('peaks that come here and there are told by how often they did before', () => {
  const places = [0.2, 0.71, 0.35, 0.88, 0.14, 0.57];
  const peakAt = (i: number) => [places[i % places.length]];
  const threeOfEight = [60, 63, 66];
  const seldom = (i: number) => (i % 11 === 0 && i < 60 ? peakAt(i) : []);
  const calm = saidOf(70, (i) => (threeOfEight.includes(i) ? peakAt(i) : []));
  expect(calm.map(({ pattern }) => pattern)).toEqual(['scattered']);
  expect(saidOf(70, (i) => (threeOfEight.includes(i) ? peakAt(i) : seldom(i)))).toEqual([]);
  const often = saidOf(70, (i) => (i >= 60 ? peakAt(i) : seldom(i)));
  expect(often.map(({ pattern }) => pattern)).toEqual(['scattered']);
});

// Binomial probabilities of eight trials, summed by hand from n! / (k! (n - k)!) p^k (1 - p)^(n - k): at least 3 at 0.05 have
// 0.00579, at least 4 at 0.1 have 0.00502 (3: 0.038), at least 5 at 0.15 have 0.00285 (4: 0.021).
test.each([
  { strokes: 0, spiked: 0, fewest: 3 },
  { strokes: 100, spiked: 11, fewest: 4 },
  { strokes: 100, spiked: 60, fewest: 5 },
])(
  'a side that peaked on $spiked of $strokes strokes must do so on $fewest of eight',
  ({ strokes, spiked, fewest }) => {
    const memory = { ...beginSpikeMemory(), usual: { main: { strokes, spiked } } };
    expect(fewestScattered(memory, 'main')).toBe(fewest);
  },
);
