import { expect, test } from 'vitest';
import type { SideMeasures } from '../../../../analysis/measures.ts';
import { summariseRoom } from '../../../../analysis/room/fold.ts';
import { changed, remeasured } from '../support/contexts.ts';
import { foldAll } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { strokeEvents } from '../support/strokeEvents.ts';

const LEARNT = 30;

const peak = (position: number) => (side: SideMeasures) => ({
  spikes: [{ position, amps: 1.5 * side.runningAmps, widthS: 0.3 }],
});

/** A room's history with peaks of each side from and up to strokes counted from when it had learnt its normal. */
function withPeaks(
  strokes: number,
  peaks: { front: [number, number]; rear: [number, number]; apart?: number },
) {
  const isWithin = ([from, end]: [number, number], i: number) => i >= LEARNT + from && i < LEARNT + end;
  const events = strokeEvents(LEARNT + strokes, ROOM, 4).map((event, i) =>
    changed(event, {
      ...(isWithin(peaks.front, i) ? { front: peak(0.42) } : {}),
      ...(isWithin(peaks.rear, i) ? { rear: peak(0.42 + (peaks.apart ?? 0)) } : {}),
    }),
  );
  return foldAll(ROOM, events);
}

test('both sides at fault alike are one warning, of no side', () => {
  const { warnings, state } = withPeaks(8, { front: [0, 8], rear: [0, 8] });
  expect(warnings.map(({ kind, side, clearedAtMs }) => [kind, side, clearedAtMs])).toEqual([
    ['stall-spike', null, null],
  ]);
  expect(warnings[0].headline).toContain('both sides');
  expect(summariseRoom(state).openWarnings).toEqual(warnings);
  expect(summariseRoom(state).headline).toBe(warnings[0].headline);
});

test.each([
  {
    name: 'moments without load',
    lose: { dips: [0.3, 0.5].map((position) => ({ position, amps: 1, widthS: 0.3 })) },
    apart: 0.1,
    said: 'The load of both sides is lost 2 times on the way',
  },
  {
    name: 'a stretch without load',
    lose: { dips: [] },
    apart: 0,
    said: 'There is hardly any load on both sides between ',
  },
])('$name on both sides alike are told of both', ({ lose, apart, said }) => {
  const lightened = (side: SideMeasures, more: number) => ({
    dips: lose.dips.map((dip) => ({ ...dip, position: dip.position + more })),
    profile: side.profile.map((amps, bin) =>
      amps !== null && lose.dips.length === 0 && bin > 20 && bin < 40 ? 0.1 * amps : amps,
    ),
  });
  const events = strokeEvents(LEARNT + 8, ROOM, 4).map((event, i) =>
    i < LEARNT
      ? event
      : changed(event, {
          front: (side) => lightened(side, 0),
          rear: (side) => lightened(side, apart),
        }),
  );
  const { warnings } = foldAll(ROOM, events);
  expect(warnings.map(({ kind, side }) => [kind, side])).toEqual([['dropped-load', null]]);
  expect(warnings[0].headline).toContain(said);
});

test('samples that both records lack are told of both, and once', () => {
  const detail = 'Up to 0.4 s of the record are missing.';
  const doubts = ROOM.sides.map((side) => ({ side, doubt: 'gaps' as const, detail }));
  const events = strokeEvents(LEARNT + 8, ROOM, 4).map((event, i) =>
    i < LEARNT ? event : remeasured(event, () => ({ doubts })),
  );
  const { warnings } = foldAll(ROOM, events);
  expect(warnings.map(({ kind, side, headline }) => [kind, side, headline])).toEqual([
    ['sensor-doubt', null, `The record of both sides cannot be trusted. ${detail}`],
  ]);
});

test('a side that follows joins the warning of the other', () => {
  const alone = withPeaks(6, { front: [0, 12], rear: [6, 12] });
  expect(alone.warnings.map(({ side }) => side)).toEqual(['front']);
  const { warnings } = withPeaks(12, { front: [0, 12], rear: [6, 12] });
  expect(warnings.map(({ id, side }) => [id, side])).toEqual([[alone.warnings[0].id, null]]);
  expect(warnings[0].openedAtMs).toBe(alone.warnings[0].openedAtMs);
});

test('what is over on one side lasts on the other, and is over with it', () => {
  const half = withPeaks(20, { front: [0, 5], rear: [0, 20] });
  expect(half.warnings.map(({ side, clearedAtMs }) => [side, clearedAtMs])).toEqual([['rear', null]]);
  const { warnings, state } = withPeaks(20, { front: [0, 5], rear: [0, 5] });
  expect(warnings.map(({ side }) => side)).toEqual([null]);
  expect(warnings[0].clearedAtMs).not.toBeNull();
  expect(summariseRoom(state).openWarnings).toEqual([]);
});

test('sides that are at fault otherwise are two warnings', () => {
  const { warnings } = withPeaks(8, { front: [0, 8], rear: [0, 8], apart: 0.2 });
  expect(warnings.map(({ side }) => side).sort()).toEqual(['front', 'rear']);
});

test.each([
  { name: 'the same', rear: 'offset', sides: [null] },
  { name: 'something else', rear: 'noise', sides: ['front', 'rear'] },
] as const)('where $name is to be doubted of both records it is told so', ({ rear, sides }) => {
  const doubts = [
    { side: 'front', doubt: 'offset' as const, detail: 'At rest the sensor reads 1.5 A instead of nothing.' },
    { side: 'rear', doubt: rear, detail: 'At rest the sensor reads 1.6 A instead of nothing.' },
  ];
  const events = strokeEvents(LEARNT + 6, ROOM, 4).map((event, i) =>
    i < LEARNT ? event : remeasured(event, () => ({ doubts })),
  );
  const said = foldAll(ROOM, events).warnings;
  expect(said.map(({ kind }) => kind)).toEqual(sides.map(() => 'sensor-doubt'));
  expect(said.map(({ side }) => side).sort()).toEqual(sides);
});
