import type { Direction, DRIVES, RoomDescription } from '../../../analysis/trace.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';
import { drawController } from './drawController.ts';
import { drawLogger } from './drawLogger.ts';
import type { CableRoom, Gearing, Side, Supply, Wave } from './room.ts';

/** What a fault needs of the room that it is drawn for. */
export interface RoomNeeds {
  readonly gearings?: readonly Gearing[];
  readonly supply?: boolean;
  readonly thermometer?: boolean;
  readonly leastRateHz?: number;
  /** Rest, inrush and stall are all on record. */
  readonly wholeRecord?: boolean;
  /** Two sides that go each at its own pace. */
  readonly loose?: boolean;
  readonly plainController?: boolean;
  readonly rated?: boolean;
  readonly leastTurns?: number;
  /** Times the rated current that it draws from the first stroke on. */
  readonly overRated?: number;
}

const TWO_MOTORS: readonly Gearing[] = ['side-by-side', 'rack'];
const GEARINGS: readonly Gearing[] = [
  'drum',
  'drum',
  'drum',
  'cross-shaft',
  'side-by-side',
  'ram',
  'rack',
  'rack',
];
const GRAVITY = 9.81;

/** Draws a room and all that belongs to it. The figures are common practice of the trade, no source. */
export function drawRoom(random: Random, needs: RoomNeeds = {}): CableRoom {
  const gearing = random.pick(needs.gearings ?? GEARINGS);
  const two = TWO_MOTORS.includes(gearing);
  const nominalVolts = random.chance(0.15) ? 24 : 12;
  const travelMetres = random.uniform(0.5, 1.3);
  const seconds = random.logUniform(8, 60);
  const speed = travelMetres / seconds;
  const turnMetres = drawTurn(random, gearing, travelMetres, needs.leastTurns ?? 0);
  const runAmps =
    (two ? random.logUniform(2.2, 12) : random.logUniform(8, 30)) / (nominalVolts === 24 ? 1.7 : 1);
  const stallTimes = random.uniform(3.4, 6);
  const rolling = random.uniform(0.05, 0.11);
  const topper = random.chance(0.3);
  const sketch = { gearing, nominalVolts, speed, runAmps, stallTimes, rolling, turnMetres, travelMetres };
  const sides = (
    two
      ? random.pick([
          ['front', 'rear'],
          ['left', 'right'],
        ])
      : ['main']
  ).map((name) => drawSide(random, name, sketch));
  const [{ newtonsPerAmp, idleAmps }] = sides;
  const runNewtons = newtonsPerAmp * (runAmps - idleAmps);
  const stallAmps = nominalVolts / sides[0].ohmAt20C;
  return {
    gearing,
    facts: drawFacts(random, needs, sketch, sides),
    travelMetres,
    speed,
    sides,
    boxNewtonsPerMetre: runNewtons * (needs.loose ? random.uniform(1, 4) : random.logUniform(3, 60)),
    turnMetres,
    cantilever: random.uniform(0, 0.12),
    retractPart: random.uniform(0.93, 1.07),
    topperNewtons: topper ? runNewtons * random.uniform(0.04, 0.1) : 0,
    topperNewtonsPerMetre: topper ? (runNewtons * random.uniform(0.02, 0.08)) / travelMetres : 0,
    bulbNewtons: runNewtons * random.uniform(0.1, 0.5),
    bulbMetres: random.uniform(0.008, 0.02),
    stopNewtonsPerMetre: runNewtons * random.logUniform(500, 2500),
    greasePerKelvin: random.uniform(0.015, 0.035),
    sealPerKelvin: random.uniform(0.003, 0.009),
    sealSet: random.uniform(0.05, 0.5),
    rollerFlats: random.chance(0.5) ? random.uniform(0.03, 0.14) : 0,
    controller: drawController(random, { two, runAmps, stallAmps, travelMetres, seconds }, needs),
    supply: drawSupply(random, nominalVolts, stallAmps * sides.length),
    logger: drawLogger(random, runAmps, stallAmps * 1.1, needs),
  };
}

interface Sketch {
  readonly gearing: Gearing;
  readonly nominalVolts: number;
  readonly speed: number;
  readonly runAmps: number;
  readonly stallTimes: number;
  readonly rolling: number;
  readonly turnMetres: number;
  readonly travelMetres: number;
}

/** Spring and slack of each gearing, newtons a metre for each newton of its usual pull, and metres. */
const JOINTS: Record<
  Gearing,
  { readonly spring: readonly [number, number]; readonly slack: readonly [number, number] }
> = {
  drum: { spring: [150, 500], slack: [0.004, 0.025] },
  'cross-shaft': { spring: [250, 800], slack: [0.002, 0.006] },
  'side-by-side': { spring: [500, 1500], slack: [0.001, 0.004] },
  ram: { spring: [500, 1800], slack: [0.001, 0.005] },
  rack: { spring: [600, 2000], slack: [0.001, 0.004] },
};

function drawSide(random: Random, name: string, sketch: Sketch): Side {
  const { gearing, nominalVolts, speed, stallTimes } = sketch;
  const runAmps = sketch.runAmps * random.uniform(0.93, 1.07);
  const idleAmps = runAmps * random.uniform(0.14, 0.3);
  const ohmAt20C = (nominalVolts / (sketch.runAmps * stallTimes)) * random.uniform(0.97, 1.03);
  const voltsPerMetreSecond = (nominalVolts * 1.02 - sketch.runAmps * ohmAt20C) / speed;
  const newtonsPerAmp = voltsPerMetreSecond * random.uniform(0.28, 0.5);
  const runNewtons = newtonsPerAmp * (runAmps - idleAmps);
  const wiperPart = random.uniform(0.1, 0.22);
  const greasePart = random.uniform(0.05, 0.14);
  const roomKg = (runNewtons * (1 - wiperPart - greasePart)) / (sketch.rolling * GRAVITY);
  const joint = JOINTS[gearing];
  const armatureKg = (random.uniform(0.04, 0.11) * voltsPerMetreSecond * newtonsPerAmp) / ohmAt20C;
  return {
    name,
    runAmps,
    idleAmps,
    ohmAt20C,
    newtonsPerAmp,
    voltsPerMetreSecond,
    armatureKg,
    armatureJoulesPerKelvin: random.uniform(10, 25) * runAmps,
    roomKg,
    springNewtonsPerMetre: random.uniform(...joint.spring) * runNewtons,
    slackMetres: random.uniform(...joint.slack),
    rollingNewtons: runNewtons * (1 - wiperPart - greasePart),
    wiperNewtons: runNewtons * wiperPart,
    greaseNewtons: runNewtons * greasePart,
    waves: drawWaves(random, sketch),
  };
}

/** A floor that is not quite flat, a pulley that is not quite round, and the rollers' own turning. */
function drawWaves(random: Random, { travelMetres, turnMetres }: Sketch): Wave[] {
  const wave = (part: number, lengthMetres: number): Wave => ({
    part,
    lengthMetres,
    phase: random.uniform(0, 2 * Math.PI),
  });
  return [
    wave(random.uniform(0.01, 0.07), travelMetres * random.uniform(0.7, 1.8)),
    wave(random.uniform(0.005, 0.04), travelMetres * random.uniform(0.25, 0.6)),
    wave(random.uniform(0.003, 0.03), turnMetres),
    wave(random.uniform(0.002, 0.02), random.uniform(0.09, 0.16)),
  ];
}

function drawTurn(random: Random, gearing: Gearing, travelMetres: number, leastTurns: number): number {
  const metres =
    gearing === 'drum'
      ? Math.PI * random.uniform(0.035, 0.07)
      : random.integer(9, 16) * random.uniform(8, 12) * 1e-3;
  return leastTurns > 0 ? Math.min(metres, travelMetres / leastTurns) : metres;
}

function drawFacts(
  random: Random,
  needs: RoomNeeds,
  sketch: Sketch,
  sides: readonly Side[],
): RoomDescription {
  const { gearing, travelMetres, turnMetres, nominalVolts, runAmps } = sketch;
  const geared = (gearing === 'rack' || gearing === 'ram') && random.chance(0.6);
  const gearTeeth = Math.max(8, Math.round(turnMetres / 0.01));
  const positiveDirection: Direction = random.chance(0.75) ? 'extend' : 'retract';
  const rated = runAmps * random.uniform(1.15, 1.6);
  return {
    drive: DRIVE_OF[gearing],
    sides: sides.map(({ name }) => name),
    travelMetres: random.chance(0.6) || geared ? travelMetres : null,
    gearTeeth: geared ? gearTeeth : null,
    rackPitchMm: geared ? (turnMetres * 1000) / gearTeeth : null,
    ratedAmps:
      needs.overRated !== undefined
        ? runAmps / needs.overRated
        : needs.rated || random.chance(0.4)
          ? Math.round(rated * 2) / 2
          : null,
    nominalVolts,
    positiveDirection,
  };
}

const DRIVE_OF: Record<Gearing, (typeof DRIVES)[number]> = {
  drum: 'cable',
  'cross-shaft': 'other',
  'side-by-side': 'other',
  ram: 'through-frame',
  rack: 'in-wall',
};

function drawSupply(random: Random, nominalVolts: number, stallAmps: number): Supply {
  // Wires are chosen for a sag of about a tenth when all motors stall.
  const ohm = nominalVolts / stallAmps;
  return {
    batteryOhm: ohm * random.uniform(0.02, 0.07),
    slowOhm: ohm * random.uniform(0.01, 0.05),
    leadOhm: ohm * random.uniform(0.02, 0.06),
    converterChance: random.pick([0.1, 0.6, 0.9]),
    generatorChance: random.pick([0, 0, 0.15]),
    converterRippleVolts: (random.logUniform(0.02, 0.25) * nominalVolts) / 12,
    rippleHz: random.chance(0.6) ? 120 : 100,
    contactOhm: random.chance(0.12) ? ohm * random.uniform(0.02, 0.06) : 0,
  };
}
