import type { Drive } from '../../../analysis/trace.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';
import { drawGeometry } from './drawGeometry.ts';
import { drawLogger } from './drawLogger.ts';
import { drawMotor, forceOf } from './drawMotor.ts';
import type { Controller, Plant, Side, Supply } from './plant.ts';

const NAMES = [
  ['front', 'rear'],
  ['left', 'right'],
  ['fore', 'aft'],
  ['A', 'B'],
];

/** One room with its motors, controller, supply and logger. */
export function drawPlant(random: Random): Plant {
  const drive = random.pick<Drive>(['in-wall', 'in-wall', 'through-frame', 'cable', 'other']);
  const pair = drive === 'in-wall' || (drive !== 'through-frame' && random.chance(0.4));
  const names = pair ? random.pick(NAMES) : ['main'];
  const nominalVolts = random.chance(0.05) ? 24 : 12;
  const volts = nominalVolts * 1.05;
  const travelMetres = random.uniform(0.35, 1.1);
  const strokeS = random.logUniform(8, 60);
  const teeth = random.integer(8, 14);
  const pitchMm = random.pick([5, 6, 8, 9.525]);
  const amps = pair ? random.logUniform(2.2, 11) : random.logUniform(8, 28);
  const unevenness = pair ? random.normal(0, 0.08) : 0;
  const wide = Math.max(-0.18, Math.min(0.18, unevenness));
  const shape = drawGeometry(random);
  const motor = drawMotor(random, amps, travelMetres / strokeS, volts);
  const sides = names.map((name, i): Side => {
    const runningAmps = amps * (1 + (i === 0 ? wide : -wide));
    const own = drawGeometry(random);
    return {
      name,
      runningAmps,
      newtons: forceOf(motor, runningAmps),
      geometry: i === 0 ? shape : { ...shape, seams: own.seams, turnPhase: own.turnPhase },
      motor: {
        ...motor,
        voltsPerSpeed: motor.voltsPerSpeed * (1 + random.normal(0, 0.008)),
        ohms: motor.ohms * (1 + random.normal(0, 0.02)),
      },
    };
  });
  const controller = drawController(random, pair, amps, volts / motor.ohms);
  const soft = controller.kind === 'step' ? random.uniform(0.02, 0.1) : random.logUniform(0.12, 3);
  const rope = drive === 'cable';
  return {
    facts: {
      drive,
      sides: names,
      travelMetres: random.chance(0.7) ? travelMetres : null,
      gearTeeth: random.chance(0.6) ? teeth : null,
      rackPitchMm: random.chance(0.6) ? pitchMm : null,
      ratedAmps: random.chance(0.5) ? Math.round(amps * random.uniform(1.35, 1.7) * 2) / 2 : null,
      nominalVolts,
      positiveDirection: random.chance(0.85) ? 'extend' : 'retract',
    },
    travelMetres,
    turnMetres: (teeth * pitchMm) / 1000,
    teeth,
    strokeS,
    sides,
    controller,
    logger: drawLogger(random, amps, motor),
    supply: drawSupply(random, nominalVolts / 12, amps * names.length),
    couplingNewtonsPerMetre: sides[0].newtons / soft,
    takeUpMetres: rope ? random.uniform(0.002, 0.008) : random.uniform(0.0004, 0.001),
    coldPart: random.uniform(0.0005, 0.003),
    stiffPart: random.uniform(0.01, 0.03),
    scatter: random.uniform(0.004, 0.018),
  };
}

function drawController(random: Random, pair: boolean, amps: number, stallAmps: number): Controller {
  const kind = random.pick<Controller['kind']>(
    pair ? ['relays', 'relays', 'step', 'step', 'ramp'] : ['relays', 'relays', 'ramp'],
  );
  const least = Math.max(amps * 3, stallAmps * 0.55);
  return {
    kind,
    rampS: kind === 'relays' ? 0 : random.uniform(0.2, 1),
    stepGain: kind === 'step' ? random.uniform(12, 40) : 0,
    countMetres: random.uniform(0.0002, 0.0008),
    limitAmps: kind !== 'relays' && random.chance(0.4) ? least : null,
    stallS: kind === 'relays' ? random.uniform(0.4, 1.2) : random.uniform(0.25, 0.8),
    shorts: random.chance(0.5),
  };
}

/** `scale`: of the nominal voltage over 12 V; `amps`: what the whole room draws. */
function drawSupply(random: Random, scale: number, amps: number): Supply {
  const drop = (volts: number) => (volts * scale) / amps;
  return {
    feedOhms: Math.min(random.uniform(0.004, 0.016), drop(0.35)),
    batteryOhms: Math.min(random.uniform(0.006, 0.02), drop(0.45)),
    batteryVolts: random.uniform(12.45, 12.85) * scale,
    shoreVolts: random.uniform(13.3, 13.8) * scale,
    engineVolts: random.uniform(13.9, 14.4) * scale,
    habit: random.pick<Supply['habit']>(['camper', 'shore', 'motorhome']),
  };
}
