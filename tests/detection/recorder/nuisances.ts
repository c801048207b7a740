import type { ServiceKind } from '../../../analysis/trace.ts';
import { changedAt, type StrokeCondition } from './condition.ts';
import type { Movement } from './movements.ts';
import type { Random } from './random.ts';
import type { RecorderRoom } from './room.ts';

/** Work on the room, told before the stroke with this index. */
export interface ToldService {
  readonly beforeStroke: number;
  readonly kind: ServiceKind;
  readonly side: string | null;
}

/** Something of real life that is no fault. */
export interface Nuisance {
  readonly name: string;
  readonly services: readonly ToldService[];
  readonly change: (condition: StrokeCondition, movement: Movement, random: Random) => StrokeCondition;
}

type NuisanceDraw = (room: RecorderRoom, strokes: number, random: Random) => Nuisance;

const DRAWS: readonly NuisanceDraw[] = [
  drawColdSnap,
  drawZeroing,
  drawPauses,
  drawNewRate,
  drawIdleService,
  drawNewLevel,
  drawCupboards,
  drawCrookedCamps,
  drawTriggers,
  drawJogs,
  drawLostSide,
  drawLostSamples,
  drawFlatBattery,
];

/** Draws what troubles a room's records without being a fault; faulty rooms have less of it and nobody works on them. */
export function drawNuisances(
  room: RecorderRoom,
  strokes: number,
  healthy: boolean,
  random: Random,
): Nuisance[] {
  const part = healthy ? 0.28 : 0.14;
  return [
    oddStrokes,
    ...DRAWS.filter(() => random.chance(part))
      .map((draw) => draw(room, strokes, random))
      .filter(({ services }) => healthy || services.length === 0),
  ];
}

/** One stroke in a hundred: somebody leans on the room, or there is a leaf in the track. */
const oddStrokes: Nuisance = {
  name: 'odd-strokes',
  services: [],
  change(condition, { broken }, random) {
    if (broken || !random.chance(0.007)) return condition;
    const [height, lasts] = random.chance(0.5)
      ? [random.between(0.15, 0.5), random.between(0.7, 3)]
      : [random.between(0.3, 0.9), random.between(0.15, 0.4)];
    const at = random.between(1.5, 9);
    const side = random.whole(0, condition.level.length - 1);
    const lean = (index: number, _: number, seconds: number) =>
      index === side && Math.abs(seconds - at) < lasts
        ? height * 0.5 * (1 + Math.cos((Math.PI * (seconds - at)) / lasts))
        : 0;
    return { ...condition, added: [...condition.added, lean] };
  },
};

function drawColdSnap(room: RecorderRoom, strokes: number, random: Random): Nuisance {
  const from = random.whole(10, strokes - 20);
  const until = from + 2 * random.whole(1, room.logger.recordsAmbient ? 5 : 2);
  const colder = random.between(8, 17);
  return {
    name: 'cold-snap',
    services: [],
    change(condition, { index }) {
      if (index < from || index >= until) return condition;
      const stiffer = 1 + room.scatter.stiffening * colder;
      return {
        ...condition,
        ambientC: condition.ambientC - colder,
        windingC: condition.windingC - colder,
        openVolts: condition.openVolts - 0.1,
        level: condition.level.map((level) => level * stiffer),
      };
    },
  };
}

/** Only where still samples show the zero may it move by much. */
function drawZeroing(room: RecorderRoom, strokes: number, random: Random): Nuisance {
  const least = Math.min(...room.motors.map(({ runningAmps }) => runningAmps));
  const most = room.logger.leadS > 0.35 ? Math.min(0.5, 0.12 * least) : 0.025 * least;
  const shifts = room.motors.map(() => random.sign() * random.between(0.3, 1) * most);
  const from = random.whole(15, strokes - 5);
  return {
    name: 'zeroing',
    services: [],
    change: (condition, { index }) =>
      index < from
        ? condition
        : recordedWith(condition, {
            zeroAmps: condition.recording.zeroAmps.map((zero, side) => zero + shifts[side]),
          }),
  };
}

function drawPauses(_: RecorderRoom, __: number, random: Random): Nuisance {
  const often = random.between(0.01, 0.06);
  return {
    name: 'pauses',
    services: [],
    change: (condition, { broken }, source) =>
      broken || !source.chance(often)
        ? condition
        : {
            ...condition,
            pause: { position: source.between(0.15, 0.85), seconds: source.scaled(0.6, 6) },
          },
  };
}

function drawNewRate(room: RecorderRoom, strokes: number, random: Random): Nuisance {
  const rateHz = random.pick([10, 20, 25, 50, 100].filter((rate) => rate !== room.logger.rateHz));
  const from = random.whole(15, strokes - 5);
  return {
    name: 'new-rate',
    services: [],
    change: (condition, { index }) => (index < from ? condition : recordedWith(condition, { rateHz })),
  };
}

function drawIdleService(room: RecorderRoom, strokes: number, random: Random): Nuisance {
  const services = Array.from({ length: random.whole(1, 3) }, () => ({
    beforeStroke: random.whole(20, strokes - 10),
    kind: random.pick(['cleaned', 'lubricated', 'fasteners-seated', 'adjusted', 'other'] as const),
    side: random.chance(0.5) ? null : random.pick(room.facts.sides),
  }));
  return { name: 'idle-service', services, change: (condition) => condition };
}

function drawNewLevel(_: RecorderRoom, strokes: number, random: Random): Nuisance {
  const beforeStroke = random.whole(30, strokes - 40);
  const kind = random.pick(['lubricated', 'cleaned', 'adjusted', 'motor-replaced'] as const);
  const replaced = kind === 'motor-replaced';
  const factor = replaced ? random.between(0.88, 1.1) : 1 - random.between(0.05, 0.2);
  const ohms = replaced ? random.between(0.88, 1.12) : 1;
  return {
    name: 'new-level',
    services: [{ beforeStroke, kind, side: null }],
    change: (condition, { index }) =>
      index < beforeStroke
        ? condition
        : {
            ...condition,
            level: condition.level.map((level) => level * factor),
            motors: condition.motors.map((motor) => ({ ...motor, ohms: motor.ohms * ohms })),
          },
  };
}

/** Lightly loaded for a season, or heavily for a trip or two. */
function drawCupboards(_: RecorderRoom, strokes: number, random: Random): Nuisance {
  const long = random.chance(0.6);
  const more = long ? random.between(-0.035, 0.035) : random.between(0.04, 0.08);
  const from = random.whole(10, strokes - 10);
  const until = from + (long ? random.whole(20, 200) : 2 * random.whole(1, 2));
  return {
    name: 'cupboards',
    services: [],
    change: (condition, { index }) =>
      index < from || index >= until
        ? condition
        : { ...condition, level: condition.level.map((level) => level * (1 + more)) },
  };
}

function drawCrookedCamps(room: RecorderRoom, _: number, random: Random): Nuisance {
  const often = random.between(0.03, 0.08);
  return {
    name: 'crooked-camps',
    services: [],
    change(condition, { campIndex, direction }) {
      const camp = random.branch(`crooked ${campIndex}`);
      if (!camp.chance(often)) return condition;
      const tilt = room.motors.length > 1 ? camp.sign() * camp.between(0.01, 0.035) : 0;
      const slope = camp.sign() * camp.between(0.015, 0.04) * (direction === 'extend' ? 1 : -1);
      return {
        ...condition,
        level: condition.level.map((level, side) => level * (1 + slope + (side === 0 ? tilt : -tilt))),
      };
    },
  };
}

function drawTriggers(_: RecorderRoom, __: number, random: Random): Nuisance {
  const late = random.between(0.01, 0.08);
  const early = random.between(0.01, 0.06);
  return {
    name: 'triggers',
    services: [],
    change(condition, _movement, source) {
      const isLate = source.chance(late);
      const isShort = source.chance(early);
      return recordedWith(condition, {
        leadS: isLate ? -source.scaled(0.03, 0.5) : condition.recording.leadS,
        tailS: isShort ? -source.between(0.1, 0.5) : condition.recording.tailS,
      });
    },
  };
}

function drawJogs(_: RecorderRoom, __: number, random: Random): Nuisance {
  const often = random.between(0.02, 0.15);
  return {
    name: 'jogs',
    services: [],
    change: (condition, { broken }, source) =>
      broken || !source.chance(often) ? condition : { ...condition, jogAfterS: source.scaled(0.3, 2) },
  };
}

function drawLostSide({ motors }: RecorderRoom, _: number, random: Random): Nuisance {
  const often = motors.length > 1 ? random.between(0.01, 0.05) : 0;
  return {
    name: 'lost-side',
    services: [],
    change: (condition, _movement, source) =>
      source.chance(often)
        ? recordedWith(condition, {
            leftOut: changedAt(condition.recording.leftOut, source.whole(0, 1), () => true),
          })
        : condition,
  };
}

function drawLostSamples(_: RecorderRoom, __: number, random: Random): Nuisance {
  const often = random.between(0.02, 0.1);
  return {
    name: 'lost-samples',
    services: [],
    change: (condition, _movement, source) =>
      source.chance(often)
        ? recordedWith(condition, {
            gaps: condition.recording.gaps.map(() => source.between(0.002, 0.03)),
          })
        : condition,
  };
}

/** A stay or two on a battery that is low, but not below what the contract calls weak. */
function drawFlatBattery(room: RecorderRoom, strokes: number, random: Random): Nuisance {
  const total = room.motors.reduce((sum, { runningAmps }) => sum + runningAmps, 0);
  const from = random.whole(10, strokes - 10);
  const until = from + random.whole(2, 8);
  const loaded = random.between(11.05, 11.6);
  return {
    name: 'flat-battery',
    services: [],
    change: (condition, { index }) =>
      index < from || index >= until
        ? condition
        : { ...condition, openVolts: loaded + 1.15 * total * condition.lineOhms },
  };
}

function recordedWith(
  condition: StrokeCondition,
  changes: Partial<StrokeCondition['recording']>,
): StrokeCondition {
  return { ...condition, recording: { ...condition.recording, ...changes } };
}
