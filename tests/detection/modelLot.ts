import type { LentNormal } from '../../analysis/baseline/lending.ts';
import { borrow } from '../../analysis/baseline/lent.ts';
import { type LentToRoom, lentByRoom } from '../../analysis/room/fold.ts';
import { drawRoom } from '../../server/demo/simulator/drawRoom.ts';
import { heavyRoom } from '../../server/demo/simulator/faults/friction.ts';
import { Random } from '../../server/demo/simulator/random.ts';
import type { SimulatedRoom } from '../../server/demo/simulator/room.ts';
import { fromMotorFleet } from './fleets.ts';
import type { FleetMember } from './motor/drawFleet.ts';
import { type PlayedHistory, playHistory } from './playFleet.ts';

/** How rooms of a lot differ from each other, and how long each is watched. */
export interface LotOptions {
  readonly siblings: number;
  readonly arrivals: number;
  readonly strokes: number;
  /** Standard deviation of the room's weight and of each clamp's scale, natural logarithm. */
  readonly weightSpread: number;
  readonly scaleSpread: number;
  /** The first side's running current of a faulty arrival, as a multiple of the healthy one. */
  readonly times: number;
}

export interface PlayedLot {
  /** Healthy and faulty arrivals, each told with what was lent and, healthy ones, also alone. */
  readonly healthy: readonly { readonly lent: PlayedHistory; readonly alone: PlayedHistory }[];
  readonly faulty: readonly PlayedHistory[];
  readonly rooms: number;
}

const STARTS_AT_MS = Date.UTC(2023, 2, 1);
const YEAR_MS = 365 * 86_400_000;
/** Strokes of a sibling: enough that it has learnt both ways. */
const SIBLING_STROKES = 18;

/** One dealer's lot of coaches of one model, drawn by the seed, then new arrivals to it. */
export function playLot(seed: number, options: LotOptions): PlayedLot {
  const random = new Random(seed);
  const model = drawRoom(random.bits(), { drive: 'in-wall', sides: ['front', 'rear'] });
  const siblings = Array.from({ length: options.siblings }, () => {
    const room = roomLike(model, random, options);
    return playMember(member(room, random, SIBLING_STROKES, STARTS_AT_MS, null));
  });
  const lent = lentBy(siblings);
  const arrivals = Array.from({ length: options.arrivals }, () => ({
    room: roomLike(model, random, options),
    seed: random.bits(),
  }));
  const play = (each: (typeof arrivals)[number], faulty: boolean, given: LentToRoom) => {
    const fault = faulty
      ? heavyRoom(each.room, { onsetStroke: 0, sideIndex: 0, times: options.times })
      : null;
    const arrivesAtMs = STARTS_AT_MS + YEAR_MS;
    return playMember(member(each.room, new Random(each.seed), options.strokes, arrivesAtMs, fault), given);
  };
  return {
    healthy: arrivals.map((each) => ({ lent: play(each, false, lent), alone: play(each, false, []) })),
    faulty: arrivals.map((each) => play(each, true, lent)),
    rooms: lent[0]?.rooms ?? 0,
  };
}

function playMember(one: FleetMember, lent: LentToRoom = []): PlayedHistory {
  const { room, events } = fromMotorFleet(one);
  return playHistory(room, events(), lent);
}

/** What all of them together lend to one more room, in the order of its channels. */
function lentBy(rooms: readonly PlayedHistory[]): LentToRoom {
  const normals = rooms.map(({ state }) => lentByRoom(state));
  return normals[0].map((_, place) =>
    borrow(
      normals.map((room) => room[place].normal).filter((normal): normal is LentNormal => normal !== null),
    ),
  );
}

function roomLike(model: SimulatedRoom, random: Random, options: LotOptions): SimulatedRoom {
  const heavier = Math.exp(random.normal(0, options.weightSpread));
  return {
    ...model,
    // Where nobody gave a rating, only the model can tell what is too much.
    facts: { ...model.facts, ratedAmps: null },
    motors: model.motors.map((motor) => ({ ...motor, gearPhase: random.uniform(0, 2 * Math.PI) })),
    load: { ...model.load, forceN: model.load.forceN * heavier },
    logging: {
      ...model.logging,
      scales: model.motors.map(() => Math.exp(random.normal(0, options.scaleSpread))),
    },
  };
}

function member(
  room: SimulatedRoom,
  random: Random,
  strokes: number,
  startsAtMs: number,
  fault: FleetMember['fault'],
): FleetMember {
  const climate = {
    meanC: random.uniform(8, 20),
    seasonC: random.uniform(4, 12),
    weatherC: random.uniform(2, 5),
  };
  return {
    seed: random.bits(),
    room,
    plan: {
      startsAtMs: startsAtMs + random.uniform(0, YEAR_MS),
      endsAtMs: null,
      strokes,
      climate,
      faults: fault === null ? [] : [fault],
      variants: [],
      services: [],
    },
    fault,
    variants: [],
  };
}
