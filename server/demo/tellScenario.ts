import type { RoomBody } from '../schemas/room.ts';
import type { ServiceBody } from '../schemas/service.ts';
import { roomOfModel } from './demoModels.ts';
import type { DemoRoom, DemoScenario, DemoStroke } from './demoScenario.ts';
import { DEMO_SIGN_IN } from './demoSignIn.ts';
import { COACH_STORIES, type RoomStory } from './demoStories.ts';
import type { HealthyVariant, HistoryPlan } from './simulator/plan.ts';
import type { SimulatedRoom } from './simulator/room.ts';
import { simulateHistory } from './simulator/simulateHistory.ts';

const DAY_MS = 86_400_000;
/** The last strokes of the lot were made this long before the demo begins, a little more for each room. */
const LATEST_MS = 3 * 3_600_000;
const SEED_STRIDE = 1009;
const CLIMATE = { meanC: 15, seasonC: 8, weatherC: 3 };

function asRecorded(room: SimulatedRoom, story: RoomStory): HealthyVariant {
  return {
    name: 'recording',
    storage: null,
    services: [],
    change: (condition) => ({
      ...condition,
      logger: {
        ...condition.logger,
        sides: story.clampedSides ?? room.motors.map((_, side) => side),
        supplyRateHz: story.withSupply === false ? null : condition.logger.supplyRateHz,
      },
    }),
  };
}

function roomBody({ facts }: SimulatedRoom): RoomBody {
  return { ...facts, sides: [...facts.sides] };
}

function tellRoom(story: RoomStory, place: number, keyPrefix: string, nowMs: number): DemoRoom {
  const room = roomOfModel(story.model, SEED_STRIDE * (place + 1));
  const plan: HistoryPlan = {
    startsAtMs: nowMs - story.days * DAY_MS,
    endsAtMs: nowMs - LATEST_MS - place * 11 * 60_000,
    strokes: story.strokes,
    climate: CLIMATE,
    faults: story.fault ? [story.fault(room)] : [],
    variants: [asRecorded(room, story)],
    services: story.services ?? [],
  };
  const strokes: DemoStroke[] = [];
  const services: ServiceBody[] = [];
  for (const event of simulateHistory(room, plan, SEED_STRIDE * (place + 1) + 1)) {
    if (event.type === 'stroke') {
      strokes.push({ key: `${keyPrefix}-${event.index + 1}`, ...event.stroke });
    } else {
      const { kind, side, notes } = event.service;
      const atS = Math.round(event.atMs / 1000);
      services.push({ kind, at: new Date(atS * 1000).toISOString(), side, notes });
    }
  }
  return { room: roomBody(room), story: story.story, services, strokes };
}

/**
 * The demo: an invented dealer with six coaches and fourteen rooms, their strokes and services over the two years
 * before `now`. The same `now` gives the same scenario.
 */
export function tellScenario(now: Date): DemoScenario {
  const nowMs = now.getTime();
  let before = 0;
  return {
    ...DEMO_SIGN_IN,
    coaches: COACH_STORIES.map(({ name, model, year, notes, logger, rooms }) => {
      const firstPlace = before;
      before += rooms.length;
      return {
        coach: { name, model, year, notes },
        logger: { name: logger, sensor: 'clamp' },
        rooms: {
          *[Symbol.iterator]() {
            for (const [at, story] of rooms.entries()) {
              const slug = `${name}-${at + 1}`.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-');
              yield tellRoom(story, firstPlace + at, slug, nowMs);
            }
          },
        },
      };
    }),
  };
}
