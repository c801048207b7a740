import { type Direction, SERVICE_KINDS, type ServiceKind } from '../../../analysis/trace.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';
import type { Habits } from './habits.ts';
import type { CableRoom } from './room.ts';
import { drawStay, type Stay } from './stay.ts';
import { drawWeather } from './weather.ts';

/** One stroke of a room's life, before anything is wrong with it. */
export interface LivedStroke {
  readonly atMs: number;
  readonly direction: Direction;
  readonly from: number;
  readonly to: number;
  readonly reversed: boolean;
  readonly stay: Stay;
  readonly stayDays: number;
  readonly ambientC: number;
  readonly contactOhm: number;
  /** Each side's rolling, against the usual. */
  readonly rolling: readonly number[];
  readonly grease: number;
  readonly rollerFlat: number;
  readonly zeroAmps: number;
  readonly holdS: number;
  readonly pauses: readonly { readonly at: number; readonly offS: number }[];
  readonly rateHz: number;
  readonly averages: boolean;
  /** A clock that is wrong, milliseconds. */
  readonly clockMs: number;
  readonly service: {
    readonly atMs: number;
    readonly kind: ServiceKind;
    readonly side: string | null;
  } | null;
}

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;

/** Lives a room's life: visits with stays, seasons, a winter's storage, and the sound things that happen. */
export function liveThrough(room: CableRoom, habits: Habits, strokes: number, random: Random): LivedStroke[] {
  const weather = drawWeather(random.fork());
  const pick = (times: number) =>
    new Set(Array.from({ length: times }, () => random.integer(10, strokes - 1)));
  const spells = (times: number) => spellsOf(pick(times), strokes, random);
  const snaps = spells(habits.coldSnaps);
  const weak = spells(habits.weakSpells);
  const strong = spells(habits.strongSpells);
  const rezeros = pick(habits.rezeros);
  const services = pick(habits.services);
  const newRateFrom = random.integer(12, strokes);
  const life: LivedStroke[] = [];
  let atMs = Date.UTC(random.integer(2021, 2024), random.integer(3, 6), random.integer(1, 28), 15);
  let position = 0;
  let last: Direction | null = null;
  let stay: Stay | null = null;
  let wander = room.sides.map(() => 0);
  let eased = 0;
  let zero = 0;
  let flats = 0;
  let left = 0;
  while (life.length < strokes) {
    const index = life.length;
    const before = life.at(-1)?.atMs ?? atMs - DAY_MS;
    if (left <= 0 && position === 0) {
      if (stay !== null) atMs += habits.gapDays * random.uniform(0.4, 1.8) * DAY_MS;
      const month = new Date(atMs).getUTCMonth();
      if (habits.winterDays > 0 && month >= 10) {
        atMs += habits.winterDays * DAY_MS;
        flats = room.rollerFlats;
      }
      atMs = atDay(atMs, random.uniform(11, 18));
      stay = drawStay(room, random, stay, habits.crookedRadians);
      left = 2 * random.integer(1, habits.pairsMost);
    } else {
      atMs += position === 0 ? random.uniform(1, 20) * HOUR_MS : random.uniform(0.2, 2.5) * DAY_MS;
    }
    const direction: Direction =
      position > 0.999 || (position > 0 && last === 'retract') ? 'retract' : 'extend';
    const turnsBack = position > 0 && position < 1 && random.chance(0.3);
    const way: Direction = turnsBack ? 'retract' : direction;
    let to = way === 'extend' ? 1 : 0;
    if (index > 4 && random.chance(habits.halfStopChance))
      to = position + (to - position) * random.uniform(0.3, 0.8);
    const bites = index > 4 && random.chance(habits.biteChance) ? random.integer(2, 3) : 1;
    wander = wander.map((value) => 0.93 * value + random.normal(0, 0.007));
    const common = random.normal(0, 0.008);
    if (rezeros.has(index)) zero = random.normal(0, 0.012) * room.sides[0].runAmps;
    const service = services.has(index) ? drawService(room, random, atMs, before) : null;
    if (service?.kind === 'lubricated' || service?.kind === 'cleaned') eased = random.uniform(0, 0.05);
    else eased *= 0.985;
    const runIn = habits.runsIn * Math.exp(-index / 25);
    const supplyShift = weak.has(index) ? -0.05 : strong.has(index) ? 0.08 : 0;
    const openVolts = weak.has(index)
      ? room.facts.nominalVolts * random.uniform(1, 1.02)
      : (stay as Stay).openVolts * (1 + Math.max(0, supplyShift));
    const spot = { ...(stay as Stay), openVolts: openVolts + random.normal(0, 0.05) };
    const ambientC = weather(atMs) - (snaps.has(index) ? random.uniform(12, 18) : 0) + random.normal(0, 0.7);
    const newRate = habits.newRateHz !== null && index >= newRateFrom;
    const ends = bitesOf(position, to, bites, random);
    for (const [bite, end] of ends.entries()) {
      if (life.length === strokes) break;
      if (bite > 0) atMs += random.uniform(12, 90) * 1000 + (2e3 * room.travelMetres) / room.speed;
      life.push({
        atMs: Math.round(atMs),
        direction: way,
        from: position,
        to: end,
        reversed: bite === 0 && way !== last,
        stay: spot,
        stayDays: bite === 0 ? (atMs - before) / DAY_MS : 0,
        ambientC,
        contactOhm: random.chance(0.3) ? room.supply.contactOhm * random.uniform(0.2, 1) : 0,
        rolling: wander.map((value) => (1 + value + common) * (1 + runIn) * (1 - eased)),
        grease: 1 - 2 * eased,
        rollerFlat: flats,
        zeroAmps:
          zero + room.logger.zeroAmps + room.logger.zeroWanderAmps * Math.sin(index / 37 + room.speed * 1e3),
        holdS: random.uniform(0.4, 2.2),
        pauses: random.chance(habits.pauseChance)
          ? [{ at: random.uniform(0.2, 0.8), offS: random.uniform(0.8, 5) }]
          : [],
        rateHz: newRate ? (habits.newRateHz as number) : room.logger.rateHz,
        averages: newRate ? !room.logger.averages : room.logger.averages,
        clockMs: random.chance(habits.clockWrongChance) ? random.uniform(-0.8, 0.8) : 0,
        service: bite === 0 ? service : null,
      });
      position = end;
      flats *= 0.55;
      if (flats < 0.01) flats = 0;
    }
    last = way;
    left -= 1;
  }
  return withClocks(life);
}

/** Moves wrong clocks by a part of the way to the neighbours, which keeps the order in which it happened. */
function withClocks(life: readonly LivedStroke[]): LivedStroke[] {
  return life.map((lived, at) => {
    if (lived.clockMs === 0 || lived.service !== null || life[at + 1]?.service)
      return { ...lived, clockMs: 0 };
    const neighbour = life[at + Math.sign(lived.clockMs)];
    const room = neighbour === undefined ? 0 : Math.abs(neighbour.atMs - lived.atMs);
    // Half the way at most, for the neighbour's clock may be wrong the other way.
    return { ...lived, clockMs: Math.round(0.45 * lived.clockMs * room) };
  });
}

function bitesOf(from: number, to: number, bites: number, random: Random): number[] {
  const cuts = Array.from({ length: bites - 1 }, (_, at) => (at + random.uniform(0.6, 1.4)) / bites).filter(
    (cut) => cut > 0.15,
  );
  return [...cuts.map((cut) => from + (to - from) * cut), to];
}

function spellsOf(starts: ReadonlySet<number>, strokes: number, random: Random): ReadonlySet<number> {
  const inside = new Set<number>();
  for (const start of starts) {
    const length = random.integer(2, 8);
    for (let at = start; at < Math.min(strokes, start + length); at++) inside.add(at);
  }
  return inside;
}

function atDay(atMs: number, hour: number): number {
  return Math.floor(atMs / DAY_MS) * DAY_MS + DAY_MS + hour * HOUR_MS;
}

/** Work on a sound room, which leaves it much as it was. */
function drawService(
  { facts }: CableRoom,
  random: Random,
  atMs: number,
  beforeMs: number,
): LivedStroke['service'] {
  const kind = random.pick(
    SERVICE_KINDS.filter((each) => each !== 'motor-replaced' && each !== 'gear-replaced'),
  );
  return {
    atMs: Math.round(atMs - random.uniform(0.02, 0.3) * (atMs - beforeMs)),
    kind,
    side: facts.sides.length > 1 && random.chance(0.5) ? random.pick(facts.sides) : null,
  };
}
