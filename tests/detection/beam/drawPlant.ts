import type { Drive, RoomDescription } from '../../../analysis/trace.ts';
import type { Control, Coupling, Edge, Ending, Logger, Motor, Plant } from './plant.ts';
import type { Random } from './random.ts';

/** What a fault needs of the room that it is drawn for. */
export interface Wants {
  readonly couplings?: readonly Coupling[];
  readonly supply?: 'any' | 'controller';
  /** A gear with at least four and a half turns a travel, told in the room's facts or not. */
  readonly gear?: boolean;
  /** Room for a multiple of the usual current below stall. */
  readonly strong?: boolean;
  readonly rated?: boolean;
  readonly endings?: readonly Ending[];
  /** Strokes whose time matters to the reading of short events: at least this rate, hertz. */
  readonly leastRateHz?: number;
}

const NAMES = [
  ['front', 'rear'],
  ['left', 'right'],
  ['driver end', 'kitchen end'],
];

/** A room within the bounds that coaches have, and that `wants` asks for. */
export function drawPlant(random: Random, wants: Wants = {}): Plant {
  const coupling = random.pick<Coupling>(
    wants.couplings ?? ['one-motor', 'one-motor', 'pulses', 'pulses', 'loose', 'tight'],
  );
  const two = coupling !== 'one-motor';
  const drive: Drive = two
    ? random.pick(['in-wall', 'in-wall', 'in-wall', 'other', 'cable'] as const)
    : random.pick(['through-frame', 'through-frame', 'cable', 'other'] as const);
  const seconds = random.betweenFactors(8, 60);
  const travelMetres = Math.min(random.between(0.5, 1.1), seconds * 0.07);
  const speed = travelMetres / seconds;
  const middleAmps = two
    ? random.betweenFactors(wants.strong ? 3 : 2.2, 11)
    : random.betweenFactors(8.5, wants.strong ? 22 : 28);
  const ambient = random.chance(0.55);
  const stallPart = wants.strong ? random.between(0.1, 0.15) : random.between(0.13, 0.27);
  const weighedKg = random.between(300, 1000);
  // What the guides resist follows from the weight; what the current's work leaves over is lost in the gears.
  const wholeNewtons = weighedKg * 9.81 * random.between(0.2, 0.6);
  const motors = Array.from({ length: two ? 2 : 1 }, () => {
    const amps = middleAmps * random.between(0.95, 1.05);
    return drawMotor(random, amps, wholeNewtons / (two ? 2 : 1), stallPart, speed, ambient);
  });
  // Small motors move light rooms.
  const drivenNewtons = motors.reduce((sum, { edgeNewtons }) => sum + edgeNewtons, 0);
  const massKg = Math.min(weighedKg, drivenNewtons / (9.81 * random.between(0.17, 0.3)));
  const edgeNewtons = (edge: number) => {
    if (two) return motors[edge].edgeNewtons * random.between(0.96, 1.04);
    return (motors[0].edgeNewtons / 2) * random.between(0.85, 1.15);
  };
  const gearTurn = drawGear(random, travelMetres, wants.gear ?? false);
  const nominalAmps = motors.map(({ amps }) => amps);
  const highest = Math.max(...nominalAmps);
  const viscousPart = ambient ? random.between(0.08, 0.22) : random.between(0.03, 0.08);
  const edges: [Edge, Edge] = [0, 1].map((edge) =>
    drawEdge(random, edgeNewtons(edge), viscousPart, speed),
  ) as [Edge, Edge];
  const facts: RoomDescription = {
    drive,
    sides: two ? random.pick(NAMES) : ['main'],
    travelMetres: random.chance(0.7) ? Math.round(travelMetres * 1000) / 1000 : null,
    gearTeeth: gearTurn.told ? gearTurn.teeth : null,
    rackPitchMm: gearTurn.told ? gearTurn.pitchMm : null,
    ratedAmps:
      (wants.rated ?? random.chance(0.6)) ? Math.round(10 * highest * random.between(1.4, 1.75)) / 10 : null,
    nominalVolts: 12,
    positiveDirection: 'extend',
  };
  return {
    facts,
    travelMetres,
    massKg,
    yawKg: massKg * random.between(0.4, 0.7),
    playMetres: drawPlay(random, coupling),
    yawNewtonsPerMetre: random.between(0.8e5, 2.5e5),
    wedging: random.between(0.05, 0.2),
    edges,
    motors: motors.map(({ motor }) => motor),
    stribeck: { rise: random.between(0.1, 0.5), metresPerSecond: speed * random.between(0.05, 0.25) },
    greasePerC: ambient ? random.between(0.02, 0.04) : random.between(0.012, 0.02),
    coulombPerC: random.between(0.0002, 0.001),
    seals: {
      newtons: edges[0].coulombNewtons * random.between(0.15, 0.6),
      metres: travelMetres * random.between(0.02, 0.06),
    },
    ramp: random.chance(0.25)
      ? {
          newtons: edges[0].coulombNewtons * random.between(0.1, 0.35),
          metres: travelMetres * random.between(0.06, 0.14),
        }
      : { newtons: 0, metres: 0.05 },
    toothMetres: gearTurn.pitchMm / 1000,
    gearMetres: (gearTurn.teeth * gearTurn.pitchMm) / 1000,
    backlashMetres: random.between(0.0003, 0.0015),
    source: {
      internalOhm: random.between(0.008, 0.02),
      feedOhm: (0.25 / (highest * nominalAmps.length)) * random.between(0.5, 1.5),
      chargerAmps: random.between(20, 55),
    },
    control: drawControl(random, coupling, nominalAmps, stallPart, seconds, wants),
    logger: drawLogger(random, nominalAmps, ambient, wants),
    nominal: { amps: nominalAmps, speed, seconds },
  };
}

function drawPlay(random: Random, coupling: Coupling): number {
  if (coupling === 'loose') return random.between(0.015, 0.04);
  return coupling === 'pulses' ? random.between(0.006, 0.03) : random.between(0.001, 0.003);
}

/** Teeth and pitch such that a travel has at least four and a half turns, where asked. */
function drawGear(random: Random, travelMetres: number, asked: boolean) {
  for (;;) {
    const teeth = random.whole(9, 18);
    const pitchMm = Math.round(random.between(5, 11) * 10) / 10;
    const turns = (travelMetres * 1000) / (teeth * pitchMm);
    if (!asked || turns > 4.5) return { teeth, pitchMm, told: random.chance(asked ? 0.75 : 0.5) };
  }
}

const COPPER_FACTOR = 0.00393;

function drawMotor(
  random: Random,
  amps: number,
  newtons: number,
  stallPart: number,
  speed: number,
  ambient: boolean,
) {
  const wholeOhm = (12.4 * stallPart) / amps;
  const cableOhm = wholeOhm * random.between(0.06, 0.2);
  const windingOhm = wholeOhm - cableOhm;
  const emf = (12.4 - amps * wholeOhm) / speed;
  const idleAmps = amps * random.between(0.15, 0.32);
  const efficiency = Math.min(0.75, Math.max(0.2, newtons / (emf * (amps - idleAmps))));
  const viscousPart = ambient ? random.between(0.1, 0.3) : random.between(0.03, 0.1);
  const idleNewtons = efficiency * emf * idleAmps;
  const rise = random.between(0.03, 0.08);
  const motor: Motor = {
    windingOhm,
    cableOhm,
    emf,
    efficiency,
    ownNewtons: idleNewtons * (1 - viscousPart),
    ownNewtonSeconds: (idleNewtons * viscousPart) / speed,
    reflectedKg: (rise * efficiency * emf * emf) / wholeOhm,
    joulesPerKelvin: random.between(10, 25) * amps,
  };
  return { amps, motor, edgeNewtons: efficiency * emf * (amps - idleAmps) };
}

function drawEdge(random: Random, newtons: number, viscousPart: number, speed: number): Edge {
  return {
    coulombNewtons: newtons * (1 - viscousPart),
    viscousNewtonSeconds: (newtons * viscousPart) / speed,
    waves: Array.from({ length: 7 }, (_, wave) => ({
      amplitude: (random.between(0.01, 0.06) * 1.5) / (1 + wave * 0.6),
      phase: random.between(0, 2 * Math.PI),
    })),
  };
}

function drawControl(
  random: Random,
  coupling: Coupling,
  amps: readonly number[],
  stallPart: number,
  seconds: number,
  wants: Wants,
): Control {
  const ending = random.pick<Ending>(
    wants.endings ?? ['released', 'released', 'cut-off', 'cut-off', 'cut-off', 'switch', 'timed'],
  );
  const most = 0.75 / stallPart;
  const factor = Math.min(most, wants.strong ? most : random.between(2.3, 3.2));
  return {
    coupling,
    ending,
    limitAmps: amps.map((each) => each * factor),
    tripS: random.between(0.1, 0.35),
    longestS: seconds * (ending === 'timed' ? random.between(1.4, 1.6) : 3),
    rampS: random.chance(0.3) ? random.between(0.2, 0.7) : 0,
    pulseMetres: random.between(0.0001, 0.0006),
  };
}

function drawLogger(random: Random, amps: readonly number[], ambient: boolean, wants: Wants): Logger {
  const rates = [10, 12.5, 20, 25, 40, 50, 50, 100, 200].filter((rate) => rate >= (wants.leastRateHz ?? 0));
  const lowest = Math.min(...amps);
  const supplied = wants.supply !== undefined || random.chance(0.6);
  const signed = random.chance(0.5);
  return {
    rateHz: random.pick(rates),
    noiseAmps: Math.min(random.betweenFactors(0.02, 0.4), lowest * 0.07),
    offsetAmps: amps.map(() => random.normal() * 0.06),
    scale: amps.map(() => 1 + random.normal() * 0.015),
    lagS: random.between(0.002, 0.02),
    resolutionAmps: random.pick([0.001, 0.01, 0.02, 0.05]),
    form: random.pick(['amps', 'amps', 'milliamps', 'times'] as const),
    signed,
    tellsDirection: !signed || random.chance(0.5),
    supply: supplied
      ? {
          rateHz: random.pick([2, 5, 10, 20]),
          sense: wants.supply === 'controller' || random.chance(0.5) ? 'controller' : 'battery',
        }
      : null,
    ambient,
  };
}

/** Copper's resistance at a temperature as a part of that at 20 °C. */
export function copperAt(celsius: number): number {
  return 1 + COPPER_FACTOR * (celsius - 20);
}
