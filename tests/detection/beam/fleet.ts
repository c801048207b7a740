import { drawCalendar, type PlannedStroke } from './calendar.ts';
import { drawPlant } from './drawPlant.ts';
import { FAULT_KINDS } from './faults/all.ts';
import { drawNuisances, type Nuisances } from './nuisances.ts';
import type { Plant } from './plant.ts';
import { Random } from './random.ts';
import type { Fault } from './story.ts';
import { Weather } from './weather.ts';

/** One room of the fleet. */
export interface BeamMember {
  readonly seed: number;
  readonly plant: Plant;
  readonly fault: Fault | null;
  readonly calendar: readonly PlannedStroke[];
  readonly nuisances: Nuisances;
  readonly strokes: number;
}

const EARLIEST_ONSET = 40;
const LATEST_ONSET = 150;
const TRIES = 60;

/** A fleet of `count` rooms, every second one with a fault; the kinds come in turn. */
export function drawBeamFleet(seed: number, count: number, strokes: number): BeamMember[] {
  return Array.from({ length: count }, (_, at) => drawMember(seed * 100_003 + at, at, strokes));
}

function drawMember(seed: number, at: number, strokes: number): BeamMember {
  const random = Random.of(seed, 1);
  const calendar = drawCalendar(seed, strokes, random.chance(0.4) ? 0.015 : 0, random.chance(0.35));
  const { plant, fault } =
    at % 2 === 0 ? { plant: drawPlant(random), fault: null } : drawFaulty(at, calendar, random);
  const weather = new Weather(seed, plant.logger.ambient, strokes / 2);
  const settlesUntil = fault === null ? strokes : fault.startsStroke - 25;
  const nuisances = drawNuisances(plant, seed, strokes, weather, settlesUntil);
  return { seed, plant, fault, calendar, nuisances, strokes };
}

function drawFaulty(
  at: number,
  calendar: readonly PlannedStroke[],
  random: Random,
): { plant: Plant; fault: Fault } {
  const kind = FAULT_KINDS[((at - 1) / 2) % FAULT_KINDS.length];
  const latest = Math.min(LATEST_ONSET, calendar.length - 60);
  for (let attempt = 0; attempt < TRIES; attempt++) {
    const plant = drawPlant(random, kind.wants);
    const fault = kind.draw(plant, calendar, random.whole(Math.min(EARLIEST_ONSET, latest), latest), random);
    if (fault !== null) return { plant, fault };
  }
  throw new Error(`No room shows ${kind.name} in ${TRIES} tries.`);
}
