import { describe, expect, test } from 'vitest';
import { copperCoefficient, copperFactor, magnetFactor } from '../../analysis/motor/copper.ts';
import {
  backEmfVolts,
  bestEfficiency,
  fromRpm,
  mechanicalTimeConstantS,
  noLoadSpeed,
  shaftTorque,
  speedPerTorque,
  stallAmps,
  steadyState,
  toRpm,
} from '../../analysis/motor/steadyState.ts';
import { near } from './values/near.ts';
import { publishedCase } from './values/read.ts';

type Figures = Record<string, number>;

const motors = <Inputs = Figures, Expected = Figures>(id: string) =>
  publishedCase<Inputs, Expected>('motor-dc-steady-state', id);

describe('Modelica Standard Library, DC_PermanentMagnet', () => {
  test('default machine', () => {
    const { inputs, expected } = motors('modelica-default-machine');
    const ohms = inputs.armatureResistance;
    const volts = backEmfVolts({ ohms }, inputs.voltage, inputs.current);
    near(volts, expected.backEmf, 1e-12);
    const motor = { ohms, constant: volts / fromRpm(inputs.speedRpm), noLoadAmps: 0 };
    near(motor.constant, expected.ke, 1e-9);
    const torque = shaftTorque(motor, inputs.current);
    near(torque, expected.torque, 1e-9);
    expect(torque).toBeCloseTo(expected.printedTorque, 2);
    const settled = steadyState(motor, inputs.voltage, torque);
    near(settled.efficiency, expected.efficiency, 1e-9);
    near(torque * settled.radiansPerSecond, expected.mechanicalPower, 1e-9);
    near(toRpm(noLoadSpeed(motor, inputs.voltage)), expected.idealNoLoadSpeedRpm, 1e-9);
    near(stallAmps(motor, inputs.voltage), expected.stallCurrent, 1e-12);
  });

  test('cold and warm armature (DCPM_Temperature)', () => {
    const { inputs, expected } = motors<Figures & { alpha20: number }>('modelica-cold-and-warm-armature');
    near(copperCoefficient(80, inputs.alpha20), expected.alpha80, 1e-9);
    const cold = inputs.resistanceAt80C * copperFactor(20, 80, inputs.alpha20);
    near(cold, expected.resistanceAt20C, 1e-9);
    const constant = 95 / fromRpm(1425);
    const speed = (ohms: number) =>
      steadyState({ ohms, constant, noLoadAmps: 0 }, inputs.voltage, inputs.loadTorque);
    near(speed(cold).amps, expected.current, 1e-9);
    near(toRpm(speed(cold).radiansPerSecond), expected.speedRpmCold, 1e-9);
    near(toRpm(speed(inputs.resistanceAt80C).radiansPerSecond), expected.speedRpmWarm, 1e-9);
  });
});

test('catalogue entry of a 48 V motor, computed and as printed (E. Pezent, Rice University, 2016)', () => {
  const { inputs, expected } = motors<Figures, Figures & { printed: Figures }>('catalogue-48v-motor');
  const motor = {
    ohms: inputs.terminalResistance,
    constant: inputs.torqueConstant,
    noLoadAmps: inputs.noLoadCurrent,
  };
  const nominal = steadyState(motor, inputs.voltage, inputs.nominalTorque);
  const found: Figures = {
    stallCurrent: stallAmps(motor, inputs.voltage),
    stallTorque: motor.constant * stallAmps(motor, inputs.voltage),
    speedConstantRpmPerVolt: toRpm(1 / motor.constant),
    noLoadSpeedRpm: toRpm(noLoadSpeed(motor, inputs.voltage)),
    speedTorqueGradientRpmPerMilliNewtonMetre: toRpm(speedPerTorque(motor)) / 1000,
    nominalSpeedRpm: toRpm(nominal.radiansPerSecond),
    nominalCurrent: nominal.amps,
    mechanicalTimeConstant: mechanicalTimeConstantS(motor, inputs.rotorInertia),
    maximumEfficiency: bestEfficiency(motor, inputs.voltage),
  };
  for (const [name, value] of Object.entries(found)) {
    near(value, expected[name], 1e-9, name);
    near(value, expected.printed[name], 0.006, name);
  }
});

test('calculation sheet of a 144 V servo motor (Magmotor data sheet 500210363 rev A)', () => {
  const { inputs, expected } = motors<Figures, Figures & { printed: Figures }>('calculation-sheet-144v');
  const constant = inputs.keVoltPerKrpm / fromRpm(1000);
  near(constant, expected.ktNewtonMetrePerAmp, 1e-9);
  const motor = { ohms: inputs.resistanceCold, constant, noLoadAmps: 0 };
  near(stallAmps(motor, inputs.voltage), expected.stallCurrent, 1e-9);
  near(toRpm(noLoadSpeed(motor, inputs.voltage)), expected.noLoadSpeedIgnoringI0R, 1e-9);
  // The sheet scales copper as (234.5 + hot) / (234.5 + 25), the same line from another reference within 0.1 %.
  near(inputs.resistanceCold * copperFactor(105, 25), expected.resistanceAt105C, 1e-3);
  near(144 / expected.resistanceAt105C, expected.stallCurrentHot, 1e-9);
  // It prints two or three figures.
  near(constant, expected.printed.ktNewtonMetrePerAmp, 0.01);
  near(stallAmps(motor, inputs.voltage), expected.printed.stallCurrent, 0.01);
  near(toRpm(noLoadSpeed(motor, inputs.voltage)), expected.printed.noLoadSpeedRpm, 1e-4);
  near(expected.stallCurrentHot, expected.printed.stallCurrentHot, 0.01);
});

describe('physics texts on back EMF', () => {
  test('toy car', () => {
    const { inputs, expected } = motors('textbook-toy-car');
    near((inputs.voltage - inputs.backEmf) / inputs.current, expected.resistance, 1e-12);
    near(stallAmps({ ohms: expected.resistance }, inputs.voltage), expected.startingCurrent, 1e-12);
  });

  test.each(['textbook-120v-motor', 'textbook-armature'])('%s', (id) => {
    const { inputs, expected } = motors(id);
    const motor = { ohms: inputs.resistance };
    near(backEmfVolts(motor, inputs.voltage, inputs.current), expected.backEmf, 1e-12);
    near(stallAmps(motor, inputs.voltage), expected.startingCurrent, 1e-12);
    for (const [name, amps] of [
      ['seriesResistanceFor15A', 15],
      ['rheostatFor60A', 60],
    ] as const) {
      if (name in expected) {
        near(stallAmps({ ohms: motor.ohms + expected[name] }, inputs.voltage), amps, 1e-12);
      }
    }
  });
});

test('ferrite motor at 80 °C: the factors of IEC 60028 and of ferrite together', () => {
  const { inputs, expected } = publishedCase<Figures, Figures>('motor-temperature', 'ferrite-motor-at-80C');
  const ohms = inputs.r20 * copperFactor(inputs.temperatureC);
  const constant = inputs.kt20 * magnetFactor(inputs.temperatureC);
  near(ohms, expected.r, 1e-12);
  near(constant, expected.kt, 1e-12);
  const hot = { ohms, constant, noLoadAmps: inputs.noLoadCurrent };
  const cool = { ohms: inputs.r20, constant: inputs.kt20, noLoadAmps: inputs.noLoadCurrent };
  near(stallAmps(hot, inputs.voltage), expected.stallCurrent, 1e-12);
  near(steadyState(hot, inputs.voltage, inputs.torque).amps, expected.currentAtTorque, 1e-12);
  near(steadyState(cool, inputs.voltage, inputs.torque).amps, expected.currentAtTorque20C, 1e-12);
  near(
    noLoadSpeed(hot, inputs.voltage) / noLoadSpeed(cool, inputs.voltage),
    expected.noLoadSpeedRatio,
    1e-12,
  );
});
