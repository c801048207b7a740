import type { Random } from '../../../server/demo/simulator/random.ts';
import { drawCourse, drawRoomCourse } from './drawCourse.ts';
import { drawLogger } from './drawLogger.ts';
import { drawMotor, drawScrew } from './drawMotor.ts';
import type { Controller, Side, WormRoom } from './room.ts';

const DRIVES = ['in-wall', 'in-wall', 'in-wall', 'through-frame', 'through-frame', 'cable', 'other'] as const;

/** What a side of a drive that only guides its room does not draw, whatever its maker rates. */
export const MOST_GUIDING_AMPS = 14;

/** What a fault asks of the room that it is to befall; nothing asked: anything may come. */
export interface RoomNeeds {
  readonly sides?: 1 | 2;
  readonly supplyRecorded?: boolean;
  readonly restRecorded?: boolean;
  readonly directionGiven?: boolean;
  /** Neither a controller nor a stiff frame keeps the sides in step. */
  readonly freeSides?: boolean;
  readonly geared?: boolean;
  /** Running current over what the maker rates, on this side or on all. */
  readonly heavy?: { readonly over: number; readonly side: 0 | 1 | 'all'; readonly rated: boolean };
}

/** Any room that meets the needs. */
export function drawRoom(random: Random, needs: RoomNeeds): WormRoom {
  const drive = needs.geared ? 'in-wall' : random.pick(DRIVES);
  const sideCount = needs.sides ?? (drive === 'in-wall' ? 2 : random.chance(0.3) ? 2 : 1);
  const nominalVolts = random.chance(0.05) ? 24 : 12;
  const travelMetres = random.uniform(0.45, 1.15);
  const strokeS = random.logUniform(8, 55);
  const metresPerS = travelMetres / strokeS;
  const toothMetres = random.uniform(0.006, 0.012);
  const turns = random.uniform(3.5, needs.geared ? 8 : 16);
  const gearTeeth = Math.min(24, Math.max(8, Math.round(travelMetres / turns / toothMetres)));
  const known = random.chance(0.55);
  const { heavy } = needs;
  const soundAmps =
    sideCount === 2 ? random.logUniform(2, 12) : random.logUniform(8, heavy === undefined ? 30 : 18);
  const reserve = random.uniform(3.8, 7.5);
  const uneven = sideCount === 2 ? random.uniform(-0.12, 0.12) : 0;
  const rated = soundAmps * (1 + Math.abs(uneven)) * random.uniform(1.25, 1.7);
  const course = drawRoomCourse(random);
  const screw = drawScrew(random, metresPerS);
  const names =
    sideCount === 1
      ? ['main']
      : random.pick([
          ['front', 'rear'],
          ['left', 'right'],
          ['rear', 'front'],
        ]);
  const sides = names.map((name, at): Side => {
    const tooHeavy = heavy !== undefined && (sideCount === 1 || heavy.side === 'all' || heavy.side === at);
    const sound = soundAmps * (at === 0 ? 1 + uneven : 1 - uneven);
    const runAmps = tooHeavy ? heavy.over * (heavy.rated ? rated : MOST_GUIDING_AMPS) : sound;
    const duty = {
      volts: 1.05 * nominalVolts,
      runAmps,
      reserve: tooHeavy ? Math.max(2.6, reserve / Math.sqrt(runAmps / sound)) : reserve,
      metresPerS: metresPerS * random.uniform(0.985, 1.015),
    };
    return {
      name,
      runAmps,
      ...drawMotor(random, duty, screw),
      ...drawCourse(random, course, {
        toothPart: toothMetres / travelMetres,
        turnPart: (gearTeeth * toothMetres) / travelMetres,
      }),
      playMetres: random.uniform(0, 0.004),
    };
  });
  const totalAmps = sides.reduce((sum, { runAmps }) => sum + runAmps, 0);
  const stallAmps = Math.max(...sides.map(({ motor }) => (nominalVolts * 1.2) / motor.ohm));
  const logger = drawLogger(random, sideCount, stallAmps, needs.geared ? 20 : 10);
  return {
    facts: {
      drive,
      sides: names,
      travelMetres: known || random.chance(0.3) ? round(travelMetres, 3) : null,
      gearTeeth: known && drive === 'in-wall' ? gearTeeth : null,
      rackPitchMm: known && drive === 'in-wall' ? round(toothMetres * 1000, 2) : null,
      ratedAmps: (heavy?.rated ?? random.chance(0.5)) ? round(rated, 1) : null,
      nominalVolts,
      positiveDirection: random.chance(0.85) ? 'extend' : 'retract',
    },
    travelMetres,
    strokeS,
    toothMetres,
    gearTeeth,
    sides,
    controller: drawController(random, needs.freeSides ?? false),
    wiring: { ohm: (random.uniform(0.015, 0.05) * nominalVolts) / totalAmps },
    frame: {
      partPerMetre: needs.freeSides ? random.uniform(0.1, 0.8) : random.uniform(0.2, 2.5),
      playMetres: random.uniform(0.003, 0.012),
    },
    stopGivesMetres: drive === 'cable' ? random.uniform(0.012, 0.03) : random.uniform(0.002, 0.01),
    filmStiffening: random.uniform(0.02, 0.08),
    logger: {
      ...logger,
      supply: needs.supplyRecorded
        ? (logger.supply ?? { rateHz: 10, zeroVolts: 0.02, stepVolts: 0.02 })
        : logger.supply,
      leadInS: needs.restRecorded ? Math.max(0.4, logger.leadInS) : logger.leadInS,
      givesDirection: needs.directionGiven || logger.givesDirection,
    },
  };
}

function drawController(random: Random, freeSides: boolean): Controller {
  const trims = random.chance(0.5) && !freeSides;
  return {
    softStartS: random.chance(0.3) ? random.uniform(0.2, 0.8) : 0,
    brakeS: random.chance(0.5) ? random.uniform(0.02, 0.12) : 0,
    trimPerMetre: trims ? random.uniform(10, 40) : 0,
    stops: random.pick(['each', 'last']),
  };
}

function round(value: number, places: number): number {
  return Number(value.toFixed(places));
}
