import { drawRoom } from './simulator/drawRoom.ts';
import { Random } from './simulator/random.ts';
import type { RoomFacts, SimulatedRoom } from './simulator/room.ts';

/** The rooms of one coach model: coaches of a model differ from each other by little. */
interface ModelRoom {
  readonly seed: number;
  readonly facts: Pick<
    RoomFacts,
    'name' | 'drive' | 'sides' | 'travelMetres' | 'gearTeeth' | 'rackPitchMm' | 'ratedAmps'
  >;
  readonly runningAmps: number;
  readonly strokeS: number;
}

const IN_WALL = { drive: 'in-wall', gearTeeth: 16, rackPitchMm: 5 } as const;
const THROUGH_FRAME = { drive: 'through-frame', sides: ['main'], gearTeeth: 18, rackPitchMm: 6.5 } as const;

const MODEL_ROOMS = {
  tallowmereLiving: {
    seed: 11,
    facts: { ...IN_WALL, name: 'Living room', sides: ['front', 'rear'], travelMetres: 0.92, ratedAmps: 9 },
    runningAmps: 5.6,
    strokeS: 34,
  },
  tallowmereBedroom: {
    seed: 12,
    facts: { ...IN_WALL, name: 'Bedroom', sides: ['front', 'rear'], travelMetres: 0.64, ratedAmps: 8 },
    runningAmps: 4.3,
    strokeS: 24,
  },
  brackenfoldLiving: {
    seed: 21,
    facts: { ...THROUGH_FRAME, name: 'Living room', travelMetres: 0.96, ratedAmps: 24 },
    runningAmps: 16,
    strokeS: 30,
  },
  brackenfoldKitchen: {
    seed: 22,
    facts: { ...THROUGH_FRAME, name: 'Kitchen', travelMetres: 0.78, ratedAmps: 20 },
    runningAmps: 12.5,
    strokeS: 26,
  },
  brackenfoldBedroom: {
    seed: 23,
    facts: { ...IN_WALL, name: 'Bedroom', sides: ['left', 'right'], travelMetres: 0.58, ratedAmps: 7 },
    runningAmps: 3.8,
    strokeS: 22,
  },
  pebblewickLounge: {
    seed: 31,
    facts: {
      name: 'Lounge',
      drive: 'cable',
      sides: ['main'],
      travelMetres: 0.7,
      gearTeeth: 14,
      rackPitchMm: 8,
      ratedAmps: 18,
    },
    runningAmps: 10.5,
    strokeS: 20,
  },
  pebblewickWardrobe: {
    seed: 32,
    facts: {
      name: 'Wardrobe',
      drive: 'other',
      sides: ['main'],
      travelMetres: 0.42,
      gearTeeth: 12,
      rackPitchMm: 6,
      ratedAmps: null,
    },
    runningAmps: 8.2,
    strokeS: 13,
  },
  pebblewickBedroom: {
    seed: 33,
    facts: { ...IN_WALL, name: 'Bedroom', sides: ['front', 'rear'], travelMetres: 0.5, ratedAmps: 7 },
    runningAmps: 3.4,
    strokeS: 19,
  },
} as const satisfies Record<string, ModelRoom>;

export type ModelRoomName = keyof typeof MODEL_ROOMS;

const SPREAD_OF_ROOMS = 0.03;

/** One coach's own room of a model: the same design, a little heavier or lighter, its gear standing elsewhere. */
export function roomOfModel(name: ModelRoomName, seed: number): SimulatedRoom {
  const { facts, runningAmps, strokeS, seed: modelSeed } = MODEL_ROOMS[name];
  const random = new Random(seed);
  const model = drawRoom(modelSeed, {
    ...facts,
    runningAmps,
    strokeS,
    rateHz: 50,
    noiseAmps: 0.06,
    supplyRateHz: 10,
  });
  return {
    ...model,
    facts: { ...model.facts, ...facts, positiveDirection: 'extend' },
    motors: model.motors.map((motor) => ({ ...motor, gearPhase: random.uniform(0, 2 * Math.PI) })),
    load: { ...model.load, forceN: model.load.forceN * (1 + random.normal(0, SPREAD_OF_ROOMS)) },
    logging: {
      ...model.logging,
      stepAmps: 0.01,
      sendsAmbient: true,
      signed: true,
      sendsDirection: true,
      form: 'rate',
    },
  };
}
