import { drawRoom } from '../../../server/demo/simulator/drawRoom.ts';
import type { PlannedFault } from '../../../server/demo/simulator/faults/fault.ts';
import type { HistoryPlan } from '../../../server/demo/simulator/plan.ts';
import { Random } from '../../../server/demo/simulator/random.ts';
import type { SimulatedRoom } from '../../../server/demo/simulator/room.ts';
import { FAULTS } from './faults/index.ts';
import { HEALTHY_VARIANTS } from './variants.ts';

/** One room of a fleet with its story; `simulateHistory(room, plan, seed)` tells it. */
export interface FleetMember {
  readonly seed: number;
  readonly room: SimulatedRoom;
  readonly plan: HistoryPlan;
  /** null: a healthy room. */
  readonly fault: PlannedFault | null;
  readonly variants: readonly string[];
}

export interface DrawFleetOptions {
  /** Strokes of each room. */
  readonly strokes?: number;
  /** The part of the rooms that bear a fault; the faults come in turn, so that each has its share. */
  readonly faultyPart?: number;
  readonly startsAtMs?: number;
}

const STARTS_AT_MS = Date.UTC(2022, 2, 1);

/** Rooms with their stories, drawn wide. Each member depends on the seed and its own place only. */
export function drawFleet(seed: number, count: number, options: DrawFleetOptions = {}): FleetMember[] {
  const { strokes = 240, faultyPart = 0.5, startsAtMs = STARTS_AT_MS } = options;
  const seeds = new Random(seed);
  let faulty = 0;
  return Array.from({ length: count }, (_, place): FleetMember => {
    const own = seeds.bits();
    const random = new Random(own);
    const bearsFault = Math.floor((place + 1) * faultyPart) > Math.floor(place * faultyPart);
    const kind = bearsFault ? FAULTS[faulty++ % FAULTS.length] : null;
    const room = drawRoom(random.bits(), kind?.leastSides === 2 ? { drive: 'in-wall' } : {});
    const variants = HEALTHY_VARIANTS.filter(() => random.chance(0.3)).map((draw) =>
      draw(room, strokes, random.fork()),
    );
    const onsetStroke = random.integer(Math.floor(strokes * 0.2), Math.floor(strokes * 0.5));
    const fault = kind === null ? null : kind.draw(room, random.fork(), onsetStroke);
    const plan: HistoryPlan = {
      startsAtMs,
      endsAtMs: null,
      strokes,
      climate: {
        meanC: random.uniform(8, 20),
        seasonC: random.uniform(4, 12),
        weatherC: random.uniform(2, 5),
      },
      faults: fault === null ? [] : [fault],
      variants,
      services: [],
    };
    return { seed: own, room, plan, fault, variants: variants.map((variant) => variant.name) };
  });
}
