import type { Direction, ServiceKind } from '../../../analysis/trace.ts';
import { Random } from '../../../server/demo/simulator/random.ts';
import type { ToldEvent } from '../playFleet.ts';
import { type ForcesCondition, usualCondition } from './condition.ts';
import type { ForcesMember } from './fleet.ts';
import type { ForcesRoom } from './room.ts';
import { forcesStroke } from './stroke.ts';

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;
const STARTS_AT_MS = Date.UTC(2022, 4, 2);

/** A stay at one camp: its ground, its weather and its supply. */
interface Stay {
  readonly openVolts: number;
  readonly weatherC: number;
  readonly tiltAmps: readonly number[];
  readonly days: number;
  readonly strokes: number;
}

/**
 * A room's history in time order, over one to two years: trips in the warm half of the year above all, of several stays
 * each; out on arrival, in before leaving, and now and then in between. `index` counts the strokes that are recorded.
 */
export function* forcesHistory({
  room,
  variants,
  fault,
  strokes,
  years,
  seed,
}: ForcesMember): Generator<ToldEvent> {
  const random = new Random(seed);
  const wander = { room: 0, sides: room.sides.map(() => 0) };
  const meanGapDays = (365 * years) / (strokes / 2.3);
  let day = 0;
  let index = 0;
  let beforeMs = Number.NEGATIVE_INFINITY;
  for (let stayIndex = 0; index < strokes; stayIndex++) {
    const stay = drawStay(room, random);
    for (let made = 0; made < stay.strokes && index < strokes; made++) {
      const direction: Direction = made % 2 === 0 ? 'extend' : 'retract';
      const own = random.fork();
      const hour = made % 2 === 0 ? own.uniform(13, 20) : own.uniform(7, 11);
      const at = Math.floor(day + (stay.days * made) / stay.strokes) + (made % 2 === 0 ? 0 : 0.01 * made);
      const drawnMs = Math.round(STARTS_AT_MS + at * DAY_MS + hour * HOUR_MS);
      const atMs = Math.max(drawnMs, beforeMs + 2 * HOUR_MS);
      beforeMs = atMs;
      if (fault?.serviceStroke === index) yield service(atMs, 'lubricated');
      const work = variants.services.get(index);
      if (work !== undefined) yield service(atMs, work);
      wanderOn(room, wander, own);
      let condition = conditionOf(room, stay, direction, atMs, wander, own);
      const place = { stroke: index, stay: stayIndex };
      for (const change of variants.changes) condition = change(condition, place, own.fork());
      if (fault !== null && index >= fault.startsStroke)
        condition = fault.change(condition, index, own.fork());
      const parts = own.chance(variants.brokenOff) ? brokenOff(condition, own) : [condition];
      for (const [part, played] of parts.entries()) {
        const startedMs = atMs + part * 90_000;
        yield {
          type: 'stroke',
          index: index++,
          broken: parts.length > 1,
          stroke: forcesStroke(room, played, new Date(startedMs).toISOString(), own.fork()),
        };
      }
    }
    const stored = variants.storageBeforeStay === stayIndex + 1 ? random.uniform(110, 200) : 0;
    day += stay.days + 1 - meanGapDays * 0.6 * Math.log(1 - random.uniform(0, 0.98)) + stored;
  }
}

function service(atMs: number, kind: ServiceKind): ToldEvent {
  return { type: 'service', atMs: atMs - HOUR_MS, kind, side: null };
}

function drawStay(room: ForcesRoom, random: Random): Stay {
  const mean = room.runningAmps.reduce((sum, own) => sum + own.extend, 0) / room.sides.length;
  const along = random.normal(0, 0.02 * mean);
  const across = random.normal(0, 0.012 * mean);
  return {
    openVolts: random.chance(0.5) ? random.uniform(13.1, 14) : random.uniform(12.3, 12.8),
    weatherC: random.normal(0, 4),
    tiltAmps: room.sides.map(
      (_, side) => along + (room.sides.length < 2 ? 0 : side === 0 ? across : -across),
    ),
    days: random.uniform(1, 6),
    strokes: random.chance(0.8) ? 2 : 2 * random.integer(2, 4),
  };
}

function wanderOn(room: ForcesRoom, wander: { room: number; sides: number[] }, random: Random): void {
  const { memory } = room.wander;
  const fresh = Math.sqrt(1 - memory * memory);
  wander.room = memory * wander.room + random.normal(0, fresh * room.wander.room);
  wander.sides = wander.sides.map((side) => memory * side + random.normal(0, fresh * room.wander.side));
}

function conditionOf(
  room: ForcesRoom,
  stay: Stay,
  direction: Direction,
  atMs: number,
  wander: { readonly room: number; readonly sides: readonly number[] },
  random: Random,
): ForcesCondition {
  const morning = direction === 'retract' ? -4 : 2;
  const ambientC = seasonC(atMs) + stay.weatherC + morning + random.normal(0, 1.5);
  return {
    ...usualCondition(room, direction),
    ambientC,
    toldC: room.sendsAmbient ? ambientC + random.normal(0, 0.7) : null,
    openVolts: stay.openVolts + random.normal(0, 0.06),
    friction: wander.sides.map((side) => Math.exp(wander.room + side)),
    tiltAmps: stay.tiltAmps,
    rateError: 1 + random.normal(0, 2e-4),
  };
}

/** The stroke in two records: up to a place, and on from there. */
function brokenOff(condition: ForcesCondition, random: Random): ForcesCondition[] {
  const place = random.uniform(0.2, 0.8);
  return [
    { ...condition, to: place, holdS: 0, pauses: [] },
    { ...condition, from: place, pauses: [] },
  ];
}

function seasonC(atMs: number): number {
  const year = (atMs / DAY_MS / 365.25) % 1;
  return 15 - 9 * Math.cos(2 * Math.PI * (year - 0.05));
}
