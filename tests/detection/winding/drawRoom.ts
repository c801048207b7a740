import type { Drive, RoomDescription } from '../../../analysis/trace.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';
import { drawController } from './drawController.ts';
import { drawGuide } from './drawGuide.ts';
import { drawLogger } from './drawLogger.ts';
import { drawMotor } from './drawMotor.ts';
import type { RoomNeeds } from './needs.ts';
import type { WindingRoom } from './room.ts';

/** What the room is to be like when it runs, before its parts are chosen for it. */
export interface RunningAim {
  readonly sides: number;
  readonly runningAmps: number;
  readonly metresPerSecond: number;
  readonly travelMetres: number;
  readonly drive: Drive;
  readonly nominalVolts: number;
  readonly leastStallRatio: number;
}

const GRAVITY = 9.81;
const TWO_MOTOR_AMPS = [2, 12] as const;
const ONE_MOTOR_AMPS = [8, 30] as const;
const SIDE_NAMES = [
  ['front', 'rear'],
  ['left', 'right'],
  ['fore', 'aft'],
] as const;

/** Draws a healthy room with its motors, guides, wiring, controller and logger. */
export function drawRoom(random: Random, needs: RoomNeeds = {}): WindingRoom {
  const sides = needs.sides ?? (random.chance(0.68) ? 2 : 1);
  const drive = needs.drives === undefined ? drawDrive(random, sides) : random.pick(needs.drives);
  const travelMetres = random.uniform(0.42, 1.05);
  const durationS = Math.min(60, Math.max(8, travelMetres / random.logUniform(0.016, 0.07)));
  const aim: RunningAim = {
    sides,
    drive,
    travelMetres,
    metresPerSecond: travelMetres / durationS,
    runningAmps: random.logUniform(...(needs.runningAmps ?? (sides === 2 ? TWO_MOTOR_AMPS : ONE_MOTOR_AMPS))),
    nominalVolts: 12,
    leastStallRatio: needs.leastStallRatio ?? 4.5,
  };
  const first = drawMotor(random, aim);
  const motors = [first];
  // The second motor is of the same make, not the same motor.
  if (sides === 2) {
    motors.push({
      ...first,
      ohmsAt20C: first.ohmsAt20C * random.normal(1, 0.02),
      newtonsPerAmp: first.newtonsPerAmp * random.normal(1, 0.008),
      noLoadAmps: first.noLoadAmps * random.normal(1, 0.06),
    });
  }
  const onRack = first.newtonsPerAmp * (aim.runningAmps - first.noLoadAmps) * first.gearEfficiency;
  const weightNewtons = Math.max(400, (onRack * sides) / random.uniform(0.1, 0.24));
  const unevenness = random.normal(0, 0.08);
  const guides = motors.map((_, index) =>
    drawGuide(random, aim, onRack * (1 + (index === 0 ? unevenness : -unevenness))),
  );
  const teeth = random.integer(11, 20);
  const pitchMetres = random.pick([0.0062832, 0.0079375, 0.0094248, 0.01]);
  return {
    facts: drawFacts(random, aim, needs, teeth, pitchMetres),
    travelMetres,
    teeth,
    pitchMetres,
    weightNewtons: Math.min(weightNewtons, 1400 * GRAVITY),
    durationS,
    runningAmps: aim.runningAmps,
    motors,
    guides,
    rampSlope: random.chance(0.25) ? random.uniform(0.01, 0.04) : 0,
    rackingPlayMetres: random.uniform(0.012, 0.03),
    rackingNewtonsPerMetre: random.logUniform(5e3, 3e4),
    rackingLimitNewtons: onRack * random.uniform(0.15, 0.35),
    controller: drawController(random, aim, first, needs),
    cold: {
      coulombPerKelvin: random.uniform(0.001, 0.004),
      wiperPerKelvin: random.uniform(0.003, 0.008),
      viscousPerKelvin: random.uniform(0.015, 0.035),
      noLoadPerKelvin: random.uniform(0.002, 0.007),
      // Ferrite magnets lose 0.19 % of their field for each kelvin, bonded rare-earth ones less.
      magnetPerKelvin: random.pick([0.0019, 0.0019, 0.0011]),
    },
    wiring: {
      batteryOhms: random.uniform(0.008, 0.02),
      sharedCableOhms: random.uniform(0.15, 0.5) / (aim.runningAmps * sides),
      shorePart: random.uniform(0.2, 0.8),
      enginePart: random.uniform(0, 0.2),
      chargerAmps: random.uniform(30, 60),
    },
    logger: drawLogger(random, aim, first, needs),
    campSpread: random.uniform(0.008, 0.022),
    strokeSpread: random.uniform(0.005, 0.015),
  };
}

function drawDrive(random: Random, sides: number): Drive {
  if (sides === 1) return random.pick(['through-frame', 'through-frame', 'through-frame', 'cable', 'other']);
  return random.pick(['in-wall', 'in-wall', 'in-wall', 'in-wall', 'cable', 'other']);
}

function drawFacts(
  random: Random,
  aim: RunningAim,
  needs: RoomNeeds,
  teeth: number,
  pitchMetres: number,
): RoomDescription {
  const knowsMuch = random.chance(0.6);
  const tellsTeeth = needs.tellsTeeth ?? (knowsMuch && aim.drive === 'in-wall');
  const tellsRating = needs.tellsRating ?? (knowsMuch && random.chance(0.7));
  return {
    drive: aim.drive,
    sides: aim.sides === 2 ? random.pick(SIDE_NAMES) : ['main'],
    travelMetres: tellsTeeth || knowsMuch ? aim.travelMetres : null,
    gearTeeth: tellsTeeth ? teeth : null,
    rackPitchMm: tellsTeeth ? pitchMetres * 1000 : null,
    ratedAmps: tellsRating ? Math.ceil(aim.runningAmps * random.uniform(1.4, 1.9)) : null,
    nominalVolts: aim.nominalVolts,
    positiveDirection: random.chance(0.15) ? 'retract' : 'extend',
  };
}
