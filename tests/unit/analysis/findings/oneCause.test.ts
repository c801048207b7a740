import { expect, test } from 'vitest';
import type { StrokeEvent } from '../../../../analysis/history.ts';
import type { DoneAnalysis, Doubt, SideMeasures } from '../../../../analysis/measures.ts';
import { type Changes, changed, remeasured } from '../support/contexts.ts';
import { foldAll } from '../support/folded.ts';
import { ONE_MOTOR, ROOM } from '../support/handMade.ts';
import { directionOf, strokeEvents } from '../support/strokeEvents.ts';

/** One cause is one warning (contract, section 6): the cause that explains the others wins. */
const FROM = 40;
const STROKES = 80;

function after(of: (index: number) => Changes, always: Changes = {}): StrokeEvent[] {
  return strokeEvents(STROKES, ROOM, 3).map((event, i) =>
    changed(changed(event, always), i < FROM ? {} : of(i)),
  );
}

const saidOf = (room: typeof ROOM, events: StrokeEvent[]) =>
  foldAll(room, events).warnings.map(({ kind, side, clearedAtMs }) => [kind, side, clearedAtMs === null]);

const shareOf = ({ front, rear }: DoneAnalysis['sides']) => {
  const total = front.runningAmps + rear.runningAmps;
  return { front: front.runningAmps / total, rear: rear.runningAmps / total };
};

const plus = (amps: number, stall: number) => (measured: SideMeasures) => ({
  runningAmps: measured.runningAmps + amps,
  endStopAmps: (measured.endStopAmps ?? 0) + stall,
});

test('a zero that moved is the reason for a rise that was said before it was seen', () => {
  const events = after((i) => ({ front: plus(2.5, i < FROM + 4 ? 7 : 2.5) }), {
    all: () => ({ offsetAmps: null }),
  });
  expect(saidOf(ROOM, events)).toEqual([
    ['rising-draw', 'front', false],
    ['sensor-doubt', 'front', true],
  ]);
});

test('while the zero is off, a record without any rest to take it off by tells of no load', () => {
  const doubts = [{ side: 'front', doubt: 'offset' as Doubt, detail: 'At rest the sensor reads 3 A.' }];
  const events = after((i) =>
    i % 4 < 2 ? {} : { front: (measured) => ({ runningAmps: measured.runningAmps + 3, offsetAmps: null }) },
  ).map((event, i) => (i < FROM || i % 4 >= 2 ? event : remeasured(event, () => ({ doubts }))));
  expect(saidOf(ROOM, events)).toEqual([['sensor-doubt', 'front', true]]);
});

test('a logger that tells its rate wrongly most of the time is one warning, and no travel is short', () => {
  const events = after((i) => ({
    all: ({ durationS }) => ({ durationS: i % 7 === 5 ? durationS : 0.72 * durationS }),
  }));
  expect(saidOf(ROOM, events)).toEqual([['sensor-doubt', null, true]]);
});

test('an overloaded drive that trips on its way is heavy, and neither late nor short', () => {
  const heavy = { ...ROOM, ratedAmps: 5 };
  const events = after((i) =>
    directionOf(i) === 'retract'
      ? {}
      : {
          front: ({ durationS }) => ({ durationS: 0.6 * durationS, endStopAmps: null }),
          rear: ({ durationS }) => ({ durationS: 0.7 * durationS, endStopAmps: null }),
        },
  );
  expect(saidOf(heavy, events)).toEqual([['heavy-room', null, true]]);
});

test('the current of a late side jumps where the other has come to its end, and that is its lateness', () => {
  const lateBy = 3;
  const events = after((i) => ({
    front: ({ durationS }) => ({
      durationS: durationS + lateBy,
      spikes: [{ position: directionOf(i) === 'extend' ? 0.9 : 0.1, amps: 13, widthS: 0.2 }],
    }),
  })).map((event, i) =>
    i < FROM ? event : remeasured(event, ({ lagS }) => ({ lagS: (lagS ?? 0) - lateBy })),
  );
  expect(saidOf(ROOM, events)).toEqual([['late-side', 'front', true]]);
});

test.each([
  { lateBy: 0.9, said: [['stall-spike', 'front', true]] },
  {
    lateBy: 3,
    said: [
      ['late-side', 'front', true],
      ['stall-spike', 'front', true],
    ],
  },
])(
  'peaks make a side late by as much as they slow its motor, and by no more: $lateBy s',
  ({ lateBy, said }) => {
    const places = Array.from({ length: 10 }, (_, tooth) => 0.1 + 0.08 * tooth);
    // Its motor draws 8 A, and 40 A where it stands: at 24 A it turns half as fast.
    const spikes = places.map((position) => ({ position, amps: 24, widthS: 0.2 }));
    const events = after(() => ({
      front: ({ durationS }) => ({ durationS: durationS + lateBy, spikes }),
    })).map((event, i) =>
      i < FROM ? event : remeasured(event, ({ lagS }) => ({ lagS: (lagS ?? 0) - lateBy })),
    );
    expect(saidOf(ROOM, events)).toEqual(said);
  },
);

test('a supply that is pulled down by the way in alone is weak until the way in finds it strong again', () => {
  const volts = (i: number) => {
    if (directionOf(i) === 'extend' || i >= 60) return 11.6;
    return i % 4 === 1 ? 10.3 : 10.7;
  };
  const events = strokeEvents(STROKES, ONE_MOTOR, 3, (i) => ({ volts: volts(i) }));
  expect(saidOf(ONE_MOTOR, events)).toEqual([['weak-supply', null, false]]);
});

test('a side that sheds its load to the other is no clamp that reads too little, though its start is read badly', () => {
  const badly = (i: number) => (i < FROM + 6 ? 0.15 : 0.25) * Math.sin(5 * i);
  const events = after(() => ({
    front: ({ runningAmps }) => ({ runningAmps: 1.25 * runningAmps }),
    rear: ({ runningAmps }) => ({ runningAmps: 0.7 * runningAmps }),
  })).map((event, i) =>
    changed(event, {
      front: () => ({ endStopAmps: null }),
      rear: ({ inrushAmps }) => ({ endStopAmps: null, inrushAmps: inrushAmps * Math.exp(badly(i)) }),
    }),
  );
  const shared = events.map((event, i) =>
    i < FROM ? event : remeasured(event, ({ sides }) => ({ share: shareOf(sides) })),
  );
  expect(saidOf(ROOM, shared)).toEqual([['uneven-sides', 'front', true]]);
});

test.each([
  { rise: 1.1, said: [['stall-spike', 'front', true]] },
  {
    rise: 1.25,
    said: [
      ['stall-spike', 'front', true],
      ['rising-draw', 'front', true],
    ],
  },
])(
  'peaks at changing places explain a rise by as much as they may add, and no more: $rise',
  ({ rise, said }) => {
    const events = strokeEvents(STROKES, ROOM, 3, (i) => {
      if (i < FROM) return {};
      const places = [0.2 + 0.05 * (i % 7), 0.5 + 0.06 * (i % 5)];
      const spikes = places.map((position) => ({ position, amps: 15, widthS: 0.3 }));
      // The load rises once the peaks are known.
      return { spikes: [spikes, []], factors: [i < FROM + 8 ? 1 : rise, 1] };
    });
    expect(saidOf(ROOM, events)).toEqual(said);
  },
);

test('a noisy sensor whose noise is taken for a moved zero now and then tells of no load', () => {
  const events = after(() => ({
    front: ({ runningAmps }) => ({ runningAmps: 1.3 * runningAmps }),
  })).map((event, i) => {
    const doubt: Doubt = i % 3 === 0 ? 'noise' : 'offset';
    const doubts = [{ side: 'front', doubt, detail: 'It is not well.' }];
    return i < FROM ? event : remeasured(event, () => ({ doubts }));
  });
  expect(saidOf(ROOM, events)).toEqual([['sensor-doubt', 'front', true]]);
});

test('a side that comes late leaves the other to drag the room: the moved share is its lateness', () => {
  const lateBy = 1.5;
  const events = after(() => ({
    front: ({ durationS, runningAmps }) => ({
      durationS: durationS + lateBy,
      runningAmps: 0.9 * runningAmps,
    }),
    rear: ({ runningAmps }) => ({ runningAmps: 1.08 * runningAmps }),
  })).map((event, i) =>
    i < FROM
      ? event
      : remeasured(event, ({ sides, lagS }) => ({ share: shareOf(sides), lagS: (lagS ?? 0) - lateBy })),
  );
  expect(saidOf(ROOM, events)).toEqual([['late-side', 'front', true]]);
});

test('what one stroke alone had opened is cleared for whoever heard of it', () => {
  const events = strokeEvents(STROKES, ONE_MOTOR, 3).map((event, i) =>
    i === FROM ? { ...event, placedByArrival: true } : event,
  );
  const heard = foldAll(ONE_MOTOR, events).judgements.flatMap(({ warnings }) => warnings);
  expect(
    heard.map(({ kind, firstStrokeId, latestStrokeId }) => [kind, firstStrokeId === latestStrokeId]),
  ).toEqual([
    ['sensor-doubt', true],
    ['sensor-doubt', true],
  ]);
  expect(heard.map(({ clearedAtMs }) => clearedAtMs === null)).toEqual([true, false]);
});

test('a motor that turns without its load for a part of its way takes longer there, which is no clock', () => {
  const events = strokeEvents(STROKES, ONE_MOTOR, 3).map((event, i) =>
    changed(
      event,
      i < FROM
        ? {}
        : {
            all: ({ durationS, profile }) => ({
              durationS: 1.3 * durationS,
              profile: profile.map((amps, bin) => (bin > 30 && bin < 48 ? 0.2 * (amps ?? 0) : amps)),
            }),
          },
    ),
  );
  expect(saidOf(ONE_MOTOR, events)).toEqual([['dropped-load', 'main', true]]);
});

test('a stall that rises with the load, while the start is as ever, is no other scale', () => {
  const events = strokeEvents(STROKES, ONE_MOTOR, 3, (i) => (i < FROM ? {} : { factors: [1.3] })).map(
    (event, i) =>
      changed(event, {
        all: ({ endStopAmps }) => ({ endStopAmps: (i < FROM ? 1 : 1.25) * (endStopAmps ?? 0) }),
      }),
  );
  expect(saidOf(ONE_MOTOR, events)).toEqual([['rising-draw', 'main', true]]);
});

test('a start that a controller lets rise with the load tells no scale', () => {
  const events = strokeEvents(STROKES, ONE_MOTOR, 3, (i) => ({
    factors: [i < FROM ? 1 : 1.4],
    volts: null,
    ambientC: null,
  })).map((event) =>
    changed(event, {
      all: ({ runningAmps }) => ({ inrushAmps: 1.2 * runningAmps, endStopAmps: null }),
    }),
  );
  expect(saidOf(ONE_MOTOR, events)).toEqual([['rising-draw', 'main', true]]);
});

test('the low stalls of a battery that is known to be weak are no cut', () => {
  const events = strokeEvents(STROKES, ONE_MOTOR, 3, (i) => ({ volts: i < FROM ? 12.6 : 9.9 })).map(
    (event, i) =>
      changed(event, {
        // A logger that wakes late sees the stall only.
        all: ({ durationS }) =>
          i < FROM
            ? { inrushAmps: 12 }
            : { inrushAmps: 12, endStopAmps: 18, offsetAmps: 0, durationS: 0.9 * durationS },
      }),
  );
  expect(saidOf(ONE_MOTOR, events)).toEqual([['weak-supply', null, true]]);
});

test.each([
  { name: 'of that side itself', risen: [1.3, 1], side: 'front' },
  { name: 'of the other side', risen: [1, 1.3], side: 'rear' },
])('a side that lost its load explains the rise $name that was said before', ({ risen, side }) => {
  const events = strokeEvents(STROKES, ROOM, 3, (i) => {
    if (i < FROM) return {};
    return { factors: i < FROM + 20 ? risen : [0.3, 1.4] };
  });
  expect(saidOf(ROOM, events)).toEqual([
    ['rising-draw', side, false],
    ['dropped-load', 'front', true],
  ]);
});

test('load that moved is no rise because one stroke does not tell of the side that was relieved', () => {
  const events = strokeEvents(STROKES, ROOM, 3, (i) => (i < FROM ? {} : { factors: [0.77, 1.18] })).map(
    (event, i) => {
      const doubts = [{ side: 'front', doubt: 'noise' as Doubt, detail: 'It is noisy.' }];
      return i === FROM + 2 ? remeasured(event, () => ({ doubts })) : event;
    },
  );
  expect(saidOf(ROOM, events)).toEqual([['uneven-sides', 'rear', true]]);
});

test.each([
  { grown: [0.985, 1.115], said: [['uneven-sides', 'rear', true]] },
  {
    grown: [1.1, 1.35],
    said: [
      ['uneven-sides', 'rear', true],
      ['rising-draw', 'rear', true],
    ],
  },
])(
  'what a side took from the other is no rise beside it, and what both draw more is: $grown',
  ({ grown, said }) => {
    const events = strokeEvents(STROKES + 20, ROOM, 3, (i) => {
      if (i < FROM) return {};
      return { factors: i < FROM + 20 ? [0.92, 1.1] : grown };
    });
    expect(saidOf(ROOM, events)).toEqual(said);
  },
);

test('a load that moves slowly, and shows first where it goes to, is told as moved once it is: one warning takes the place of the other', () => {
  const events = strokeEvents(STROKES + 20, ROOM, 3, (i) => {
    const far = Math.min(1, Math.max(0, i - FROM) / 30);
    return { factors: [1 - 0.2 * Math.max(0, (far - 0.5) / 0.5), 1 + 0.22 * Math.min(1, 2 * far)] };
  });
  expect(saidOf(ROOM, events)).toEqual([
    ['rising-draw', 'rear', false],
    ['uneven-sides', 'rear', true],
  ]);
});
