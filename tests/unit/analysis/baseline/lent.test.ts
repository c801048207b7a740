import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LentNormal } from '../../../../analysis/baseline/lending.ts';
import { borrow } from '../../../../analysis/baseline/lent.ts';
import type { RoomEvent, RoomSummary } from '../../../../analysis/history.ts';
import { MEASURE_INDEX } from '../../../../analysis/measures.ts';
import {
  advanceRoom,
  beginRoom,
  type LentToRoom,
  lentByRoom,
  limitsOf,
  summariseRoom,
} from '../../../../analysis/room/fold.ts';
import type { RoomDescription } from '../../../../analysis/trace.ts';
import { SEEDED } from '../support/arbitrary.ts';
import { changed } from '../support/contexts.ts';
import { foldAll, kindsOf, ROOM_ID } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { serviceEvent, strokeEvent, strokeEvents, type Told } from '../support/strokeEvents.ts';

const SPREADS = [1, 0.97, 1.04, 1.01, 0.95, 1.03, 0.99];
const both = (factor: number): Partial<Told> => ({ factors: [factor, factor] });

/** What rooms whose sides draw `factors` times the usual lend to one more. */
function lentByRooms(
  factors: readonly number[],
  more: (index: number) => Partial<Told> = () => ({}),
): LentToRoom {
  const rooms = factors.map((factor, seed) =>
    lentByRoom(
      foldAll(
        ROOM,
        strokeEvents(20, ROOM, 100 + seed, (i) => ({ ...both(factor), ...more(i) })),
      ).state,
    ),
  );
  return rooms[0].map((_, place) =>
    borrow(rooms.map((room) => room[place].normal).filter((one): one is LentNormal => one !== null)),
  );
}

function foldLent(lent: LentToRoom, events: readonly RoomEvent[], room: RoomDescription = ROOM) {
  const state = beginRoom(ROOM_ID, room, lent);
  const verdicts: RoomSummary[] = [];
  const judgements = events.map((event) => {
    const judgement = advanceRoom(state, event);
    verdicts.push(summariseRoom(state));
    return judgement;
  });
  return { state, judgements, verdicts, warnings: judgements.flatMap(({ warnings }) => warnings) };
}

const LENT = lentByRooms(SPREADS);

test('a room that is heavy from the first stroke on has not risen above what others lend it', () => {
  const { warnings } = foldLent(
    lentByRooms(SPREADS),
    strokeEvents(40, ROOM, 4, () => both(2.4)),
  );
  expect(new Set(kindsOf(warnings))).toEqual(new Set(['heavy-room']));
});

test.each([
  { name: 'load that moves over', after: { factors: [1.2, 0.8] }, said: ['uneven-sides', 'front'] },
  { name: 'a side that comes late', after: { lagS: 1.6 }, said: ['late-side', 'rear'] },
  { name: 'a rise of a third', after: { factors: [1.35, 1.35] }, said: ['rising-draw', null] },
])('$name after two good strokes is held against them and the model, and not learnt', ({ after, said }) => {
  for (const seed of [4, 5, 6]) {
    const rated = { ...ROOM, ratedAmps: 9 };
    const events = strokeEvents(12, rated, seed, (i) => (i < 2 ? {} : after));
    const { warnings } = foldLent(LENT, events, rated);
    const latest = new Map(warnings.map((warning) => [warning.id, warning]));
    expect(
      [...latest.values()].map(({ kind, side, clearedAtMs }) => [kind, side, clearedAtMs]),
      `seed ${seed}`,
    ).toEqual([[...said, null]]);
  }
});

test('what catches from the first stroke on is no course of a room that borrows its normal', () => {
  const spike = { position: 0.62, amps: 16, widthS: 0.5 };
  const catches: Partial<Told> = {
    bump: { from: 0.6, to: 0.64, part: 1 },
    spikes: [[spike], []],
  };
  const { warnings } = foldLent(
    lentByRooms(SPREADS),
    strokeEvents(60, ROOM, 4, () => catches),
  );
  expect(new Set(warnings.map(({ kind, side, pattern }) => `${kind} ${side} ${pattern}`))).toEqual(
    new Set(['stall-spike front same-place']),
  );
  expect(warnings.at(-1)?.clearedAtMs).toBeNull();
  expect(new Set(warnings.map(({ id }) => id)).size).toBe(1);
});

describe('a new room of a model that seven rooms are known of', () => {
  const lent = LENT;
  const { judgements, verdicts, warnings, state } = foldLent(lent, strokeEvents(40, ROOM, 1));

  test('has a normal from the second stroke of a direction on, with wider limits at first', () => {
    judgements.forEach(({ expectations }, index) => {
      const known = expectations.filter(({ measure }) => measure === 'runningAmps');
      expect(known.map(({ expected }) => expected !== null)).toEqual(known.map(() => index >= 2));
      expect(known.map(({ beyond }) => beyond !== null)).toEqual(known.map(() => index >= 2));
    });
    const width = (strokes: number) => {
      const { state: at } = foldLent(lent, strokeEvents(strokes, ROOM, 1));
      const [first] = limitsOf(at).filter(({ measure }) => measure === 'runningAmps');
      return Math.log(first.limits.upper / first.limits.lower);
    };
    expect(width(4)).toBeGreaterThan(1.3 * width(40));
  });

  test('is clear from the second stroke each way on, and says by whom it is judged', () => {
    expect(verdicts.map(({ verdict }) => verdict)).toEqual(
      verdicts.map((_, i) => (i < 3 ? 'learning' : 'clear')),
    );
    expect(verdicts[0].headline).toContain('1 of 2 strokes out and 0 of 2 strokes in');
    expect(verdicts[3].headline).toContain('Judged by others of the same model until it has its own normal.');
    expect(verdicts[15].headline).not.toContain('same model');
    expect(warnings).toEqual([]);
  });

  test('says after work how many strokes it still learns from, not that it has all of them', () => {
    const events = [...strokeEvents(12, ROOM, 1), serviceEvent(6, 'gear-replaced')];
    const { verdicts: said } = foldLent(
      lent,
      events.sort((a, b) => a.atMs - b.atMs),
    );
    const counts = said
      .filter(({ verdict }) => verdict === 'learning')
      .map(({ headline }) => [...headline.matchAll(/(\d+) of (\d+) strokes/g)]);
    expect(counts.length).toBeGreaterThan(2);
    for (const ways of counts)
      expect(ways.some(([, seen, needed]) => Number(seen) < Number(needed))).toBe(true);
  });

  test('borrows less with every stroke of its own', () => {
    const shares = verdicts.map(({ borrowed }) => borrowed?.share ?? 0);
    expect(verdicts[3].borrowed?.rooms).toBe(7);
    expect(shares[0]).toBeGreaterThan(shares[3]);
    expect(shares[3]).toBeGreaterThan(shares[15]);
    expect(shares[15]).toBeLessThan(0.1);
    expect(shares.every((share) => share >= 0 && share <= 1)).toBe(true);
  });

  test('lends on what it would lend had nobody lent to it', () => {
    expect(lentByRoom(state)).toEqual(lentByRoom(foldAll(ROOM, strokeEvents(40, ROOM, 1)).state));
  });
});

test.each([
  { rooms: 0, needed: 8 },
  { rooms: 1, needed: 5 },
  { rooms: 2, needed: 3 },
  { rooms: 3, needed: 2 },
  { rooms: 30, needed: 2 },
])('with $rooms rooms that lend, $needed strokes each way are learnt from', ({ rooms, needed }) => {
  const lent =
    rooms === 0 ? [] : lentByRooms(Array.from({ length: rooms }, (_, i) => SPREADS[i % SPREADS.length]));
  const { verdicts } = foldLent(lent, strokeEvents(18, ROOM, 2));
  expect(verdicts.findIndex(({ verdict }) => verdict !== 'learning') + 1).toBe(2 * needed);
});

test('rooms that differ from each other twofold lend nothing', () => {
  expect(lentByRooms([1, 2, 0.5, 3, 1.5]).every((lent) => lent === null)).toBe(true);
});

test('a room far from the others of its model does not lend', () => {
  const lent = lentByRooms([...SPREADS, 1.8]);
  expect(lent.map((each) => each?.rooms)).toEqual([7, 7, 7, 7]);
});

test('a side that draws 40 % more than its model from the first stroke on is heavy', () => {
  const { warnings } = foldLent(
    LENT,
    strokeEvents(8, ROOM, 3, () => ({ factors: [1.4, 1] })),
  );
  expect(new Set(kindsOf(warnings))).toEqual(new Set(['heavy-room']));
  expect(warnings[0]).toMatchObject({ side: 'front' });
  expect(warnings[0].headline).toMatch(
    /^The front side draws .* A; rooms of the same model need about .* A\./,
  );
});

describe('rooms that draw 0.4 of what a new one does', () => {
  const saidBy = (factors: readonly number[], ratedAmps: number | null) => {
    const room = { ...ROOM, ratedAmps };
    return new Set(kindsOf(foldLent(lentByRooms(factors), strokeEvents(30, room, 3), room).warnings));
  };
  const saidWith = (rooms: number, ratedAmps: number | null) =>
    saidBy(
      SPREADS.slice(0, rooms).map((factor) => 0.4 * factor),
      ratedAmps,
    );

  test.each([2, 3])('say that it is heavy where they are %i', (rooms) => {
    expect(saidWith(rooms, null)).toEqual(new Set(['heavy-room']));
  });

  test('say nothing of its weight where there is one, or two that are unlike each other', () => {
    expect(saidWith(1, null)).toEqual(new Set());
    expect(saidBy([0.4, 0.6], null)).toEqual(new Set());
    expect(saidBy([0.4, 0.8], null)).toEqual(new Set());
  });

  test('say nothing of one that stays within its own rating', () => {
    expect(saidWith(3, 10)).toEqual(new Set());
    expect(saidWith(3, 7.8)).toEqual(new Set(['heavy-room']));
  });
});

test('a room that runs near its stall is heavy, however much others of its model draw', () => {
  const events = strokeEvents(40, ROOM, 3).map((event, i) => {
    const stallAmps = 14.5 + 0.2 * Math.sin(2.3 * i);
    return changed(event, { all: () => ({ inrushAmps: stallAmps, endStopAmps: stallAmps }) });
  });
  const lent = lentByRooms([1, 1.05, 0.97]);
  const { warnings } = foldLent(lent, events);
  expect(warnings.filter(({ kind }) => kind === 'heavy-room').at(-1)).toMatchObject({ clearedAtMs: null });
});

test('rooms that are heavy for their drive say nothing of what their model needs', () => {
  expect(lentByRooms([2.7, 2.6, 2.8])).toEqual([null, null, null, null]);
  expect(lentByRooms([2.7, 1, 2.8, 1.02, 0.97]).map((lent) => lent?.rooms)).toEqual([3, 3, 3, 3]);
});

test('one odd first stroke is no normal that the next ones fall short of for ever', () => {
  const { state, warnings } = foldLent(
    LENT,
    strokeEvents(30, ROOM, 4, (i) => (i < 2 ? both(1.35) : {})),
  );
  const plain = foldAll(ROOM, strokeEvents(30, ROOM, 4)).state;
  const level = (of: typeof state) =>
    limitsOf(of).find(({ measure }) => measure === 'runningAmps')?.limits.centre ?? 0;
  expect(level(state) / level(plain)).toBeLessThan(1.03);
  expect(warnings).toEqual([]);
});

test('work that changes the mechanism begins the count of what is lent anew, cleaning does not', () => {
  const lending = (kind: 'gear-replaced' | 'cleaned') => {
    const events = [...strokeEvents(20, ROOM, 5), serviceEvent(8, kind)].sort((a, b) => a.atMs - b.atMs);
    return lentByRoom(foldAll(ROOM, events).state).map(({ normal }) => normal !== null);
  };
  expect(lending('gear-replaced')).toEqual([false, false, false, false]);
  expect(lending('cleaned')).toEqual([true, true, true, true]);
});

test('strokes set aside, unusable or on a weak supply are not lent', () => {
  for (const aside of [{ excluded: true }, { unusable: true }, { volts: 9 }]) {
    const { state } = foldAll(
      ROOM,
      strokeEvents(18, ROOM, 6, (i) => (i < 4 ? { ...aside, factors: [3, 3] } : {})),
    );
    expect(lentByRoom(state).map(({ normal }) => normal)).toEqual([null, null, null, null]);
  }
});

test('in whatever order rooms are named, they lend the same; a constant factor moves the level alone', () => {
  const normals = SPREADS.map((factor, seed) => {
    const { state } = foldAll(
      ROOM,
      strokeEvents(20, ROOM, 100 + seed, () => both(factor)),
    );
    const [{ normal }] = lentByRoom(state);
    if (normal === null) throw new Error('Nothing is lent.');
    return normal;
  });
  const plain = borrow(normals)?.measures[0] ?? null;
  fc.assert(
    fc.property(
      fc.shuffledSubarray(normals, { minLength: normals.length, maxLength: normals.length }),
      (shuffled) => {
        const prior = borrow(shuffled)?.measures[0];
        expect(prior?.means[0]).toBeCloseTo(plain?.means[0] ?? 0, 9);
        expect(prior?.covariance[0]).toBeCloseTo(plain?.covariance[0] ?? 0, 9);
      },
    ),
    { ...SEEDED, numRuns: 20 },
  );
  const doubled = normals.map((normal) => ({
    ...normal,
    measures: normal.measures.map((one) => (one === null ? null : { ...one, value: one.value + Math.LN2 })),
  }));
  const prior = borrow(doubled)?.measures[0];
  expect(prior?.means[0]).toBeCloseTo((plain?.means[0] ?? 0) + Math.LN2, 9);
  expect(prior?.covariance[0]).toBeCloseTo(plain?.covariance[0] ?? 0, 9);
});

test('what was learnt in winter is brought to summer by slopes that are as uncertain as they are', () => {
  const winter = lentByRooms(SPREADS, () => ({ ambientC: -5 }))[0]?.measures[0];
  const summer = lentByRooms(SPREADS, () => ({ ambientC: 20 }))[0]?.measures[0];
  expect(winter?.covariance[0] ?? 0).toBeGreaterThan(1.5 * (summer?.covariance[0] ?? 1));
});

test('nothing is lent of a measure that was never recorded', () => {
  const lent = lentByRooms(SPREADS, () => ({ volts: null }));
  const { judgements } = foldLent(lent, strokeEvents(20, ROOM, 7));
  const energy = judgements.map(({ expectations }) =>
    expectations.filter(({ measure }) => measure === 'energyJ').every(({ expected }) => expected !== null),
  );
  expect(energy.slice(0, 16)).toEqual(energy.slice(0, 16).map(() => false));
  expect(energy.slice(16)).toEqual([true, true, true, true]);
  expect(strokeEvent(0, ROOM, 7).analysis.status).toBe('done');
});

test('strokes that owners broke off and took up again lend neither their time nor the spread of it', () => {
  const rooms = SPREADS.slice(0, 3).map((factor, seed) => {
    const events = strokeEvents(20, ROOM, 100 + seed, () => both(factor)).map((event, index) =>
      index % 7 < 3
        ? changed(event, {
            all: ({ durationS }) => ({ durationS: (index % 2 === 0 ? 0.35 : 0.6) * durationS }),
          })
        : event,
    );
    return lentByRoom(foldAll(ROOM, events).state);
  });
  const durations = rooms.flat().map(({ normal }) => normal?.measures[MEASURE_INDEX.durationS] ?? null);
  expect(durations).toHaveLength(12);
  for (const duration of durations) {
    expect(Math.abs(Math.exp(duration?.value ?? 0) / 20 - 1)).toBeLessThan(0.03);
    expect(duration?.scale).toBeLessThan(0.06);
  }
});
