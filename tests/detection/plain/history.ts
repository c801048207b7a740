import type { Direction, ServiceKind } from '../../../analysis/trace.ts';
import { Random } from '../../../server/demo/simulator/random.ts';
import type { ToldEvent } from '../playFleet.ts';
import { type PlainCondition, plainCondition } from './condition.ts';
import type { PlainMember } from './fleet.ts';
import { plainStroke } from './stroke.ts';

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;
const STARTS_AT_MS = Date.UTC(2023, 3, 10);

/** One stay at a camp: what all its strokes share. */
interface Stay {
  readonly openVolts: number;
  readonly weatherC: number;
  readonly strokes: number;
}

/**
 * A room's history in time order: stays of two strokes as a rule, now and then of more, about 30 a year. `index` counts
 * the strokes that are recorded.
 */
export function* plainHistory({ room, variants, fault, strokes, seed }: PlainMember): Generator<ToldEvent> {
  const random = new Random(seed);
  const walk = { room: 0, sides: room.sides.map(() => 0) };
  let day = 0;
  let index = 0;
  let beforeMs = Number.NEGATIVE_INFINITY;
  for (let stayIndex = 0; index < strokes; stayIndex++) {
    const stay = drawStay(random);
    const lengthDays = random.uniform(1, 5);
    for (let made = 0; made < stay.strokes && index < strokes; made++) {
      const direction: Direction = made % 2 === 0 ? 'extend' : 'retract';
      const own = random.fork();
      const { memory, spread, sideSpread } = room.friction;
      const fresh = Math.sqrt(1 - memory * memory);
      walk.room = memory * walk.room + own.normal(0, fresh * spread);
      walk.sides = walk.sides.map((side) => memory * side + own.normal(0, fresh * sideSpread));
      const hour = direction === 'extend' ? 16 : 9.5;
      const at = day + (lengthDays * made) / stay.strokes;
      const drawnMs = Math.round(STARTS_AT_MS + Math.floor(at) * DAY_MS + (hour + made * 0.01) * HOUR_MS);
      const atMs = Math.max(drawnMs, beforeMs + 2 * HOUR_MS);
      beforeMs = atMs;
      if (!room.records.includes(direction)) continue;
      if (fault !== null && fault.serviceStroke === index) yield service(atMs, 'lubricated');
      const work = variants.services.get(index);
      if (work !== undefined) yield service(atMs, work);
      let condition: PlainCondition = {
        ...plainCondition(room, direction),
        ambientC: weather(atMs) + stay.weatherC + own.normal(0, 2),
        openVolts: stay.openVolts + own.normal(0, 0.08),
        levels: walk.sides.map((side) => Math.exp(walk.room + side)),
        rateError: 1 + own.normal(0, 2e-4),
      };
      for (const change of variants.changes) condition = change(condition, index, stayIndex, own.fork());
      const faulty = fault !== null && index >= fault.startsStroke;
      if (faulty) condition = fault.change(condition, index, own.fork());
      const parts = variants.parts(condition, index, own.fork());
      for (const [place, part] of parts.entries()) {
        const startedAt = new Date(atMs + 60_000 * place).toISOString();
        yield {
          type: 'stroke',
          index: index++,
          broken: parts.length > 1,
          stroke: plainStroke(room, part, startedAt, own.fork()),
        };
      }
    }
    day += lengthDays + random.uniform(1, 14) + (variants.storageBeforeStay === stayIndex + 1 ? 130 : 0);
  }
}

function service(atMs: number, kind: ServiceKind): ToldEvent {
  return { type: 'service', atMs: atMs - HOUR_MS, kind, side: null };
}

function drawStay(random: Random): Stay {
  const shore = random.chance(0.4);
  return {
    openVolts: shore ? random.uniform(13.2, 14.2) : random.uniform(12.3, 12.9),
    weatherC: random.normal(0, 4),
    strokes: random.chance(0.85) ? 2 : 2 * random.integer(2, 4),
  };
}

function weather(atMs: number): number {
  const year = (atMs / DAY_MS / 365.25) % 1;
  return 14 - 10 * Math.cos(2 * Math.PI * (year - 0.04));
}
