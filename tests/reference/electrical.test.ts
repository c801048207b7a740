import { describe, expect, test } from 'vitest';
import { batteryCharge } from '../../analysis/motor/battery.ts';
import {
  COPPER_CONDUCTIVITY,
  copperCoefficient,
  copperFactor,
  copperTemperatureC,
  REMANENCE_PER_C,
} from '../../analysis/motor/copper.ts';
import {
  aliasedHz,
  drivenRpm,
  gearMesh,
  huntingToothHz,
  ripplesPerRevolution,
} from '../../analysis/motor/gearMesh.ts';
import {
  ampsPerCount,
  shunt,
  shuntContinuousAmps,
  shuntOhms,
  shuntRatedWatts,
} from '../../analysis/motor/shunt.ts';
import { voltageDrop, wireAreaMm2, wireDiameterMm, wireOhmsPerMetre } from '../../analysis/motor/wire.ts';
import { allNear, allWithin, near } from './values/near.ts';
import { publishedCase } from './values/read.ts';

type Figures = Record<string, number>;
interface Table {
  rows: number[][];
}

const FEET_1000_METRES = 304.8;

describe('copper (IEC 60028, 1925)', () => {
  test.each(publishedCase<object, Table>('motor-temperature', 'copper-resistance-factor').expected.rows)(
    'factor at %d °C',
    (temperatureC, linear, ratio) => {
      near(copperFactor(temperatureC), linear, 1e-12);
      near(copperFactor(temperatureC), ratio, 3e-4);
    },
  );

  test('coefficient from other references', () => {
    const { inputs, expected } = publishedCase<{ referenceC: number[] }, { alpha: number[] }>(
      'motor-temperature',
      'copper-coefficient-at-other-reference',
    );
    allNear(
      inputs.referenceC.map((reference) => copperCoefficient(reference)),
      expected.alpha,
      1e-12,
    );
  });

  test('temperature from resistance, and resistivity', () => {
    const { inputs, expected } = publishedCase<Figures, Figures>(
      'motor-temperature',
      'temperature-from-resistance',
    );
    near(copperTemperatureC(inputs.r, inputs.r20), expected.temperatureC, 1e-12);
    const standard = publishedCase<object, Figures>('motor-temperature', 'standard-annealed-copper').expected;
    expect(COPPER_CONDUCTIVITY).toBe(standard.conductivityMetrePerOhmMm2);
    near(1 / COPPER_CONDUCTIVITY, standard.resistivityOhmMm2PerMetre, 1e-12);
  });

  test('magnets (Modelica Standard Library, FluxTubes.Material.HardMagnetic)', () => {
    const { alphaBrPerK } = publishedCase<object, { alphaBrPerK: Figures }>(
      'motor-temperature',
      'magnet-remanence-coefficients',
    ).expected;
    expect(REMANENCE_PER_C.ferrite).toBe(alphaBrPerK.ferrite);
    expect(REMANENCE_PER_C.neodymium).toBe(alphaBrPerK.NdFeBSintered);
    expect(REMANENCE_PER_C.samariumCobalt).toBe(alphaBrPerK.Sm2Co17);
  });
});

describe('gears and commutators (public vibration pages, power-mi.com)', () => {
  const gears = <Inputs = Figures, Expected = Figures>(id: string) =>
    publishedCase<Inputs, Expected>('gear-mesh-and-commutation-ripple', id);

  test.each(['gear-mesh', 'gear-mesh-coprime'])('%s', (id) => {
    const { inputs, expected } = gears(id);
    const meshHz = gearMesh(inputs.teeth1, inputs.rpm1);
    near(meshHz, expected.meshHz, 1e-12);
    const rpm2 = drivenRpm(inputs.rpm1, inputs.teeth1, inputs.teeth2);
    near(rpm2, expected.rpm2, 1e-12);
    near(gearMesh(inputs.teeth2, rpm2), meshHz, 1e-12);
    near(huntingToothHz(meshHz, inputs.teeth1, inputs.teeth2), expected.huntingToothHz, 1e-12);
  });

  test.each(gears<object, Table>('ripples-per-revolution').expected.rows)(
    '%d poles and %d segments give %d ripples',
    (poles, segments, ripples) => expect(ripplesPerRevolution(poles, segments)).toBe(ripples),
  );

  test('ripple frequency and its alias', () => {
    const { inputs, expected } = gears('ripple-frequency');
    const perTurn = ripplesPerRevolution(inputs.poles, inputs.segments);
    expect(perTurn).toBe(expected.ripplesPerRevolution);
    near(gearMesh(perTurn, inputs.rpm), expected.rippleHz, 1e-12);
    const aliased = gears('aliased-ripple');
    near(aliasedHz(aliased.inputs.rippleHz, aliased.inputs.sampleHz), aliased.expected.apparentHz, 1e-12);
  });
});

describe('shunts (public supplier pages, riedon.com)', () => {
  test.each(publishedCase<object, Table>('current-shunts', 'printed').expected.rows)(
    '%d A, %d mV at %d mV',
    (ratedAmps, ratedMillivolts, millivolts, amps, ohms) => {
      near(shunt({ ratedAmps, ratedMillivolts }, millivolts), amps, 1e-12);
      near(shuntOhms({ ratedAmps, ratedMillivolts }), ohms, 1e-12);
    },
  );

  test('resistance, heat and derating', () => {
    const { inputs, expected } = publishedCase<{ shunts: [number, number][] }, Record<string, number[]>>(
      'current-shunts',
      'computed',
    );
    const shunts = inputs.shunts.map(([ratedAmps, ratedMillivolts]) => ({ ratedAmps, ratedMillivolts }));
    allNear(shunts.map(shuntOhms), expected.resistanceOhm, 1e-12);
    allNear(shunts.map(shuntRatedWatts), expected.ratedPowerWatt, 1e-12);
    allNear(shunts.map(shuntContinuousAmps), expected.continuousAtTwoThirds, 1e-12);
  });

  test('converter counts', () => {
    const { inputs, expected } = publishedCase<Figures & { counts: never }, { ampere: number[] }>(
      'current-shunts',
      'adc-counts',
    );
    const { bits, referenceVolt: referenceVolts, gain, shuntOhm } = inputs;
    const scale = ampsPerCount(shuntOhm, { bits, referenceVolts, gain });
    allNear(
      [0, 100, 1000, 4095].map((count) => count * scale),
      expected.ampere,
      1e-12,
    );
  });
});

describe('wire (ASTM B258; NEC chapter 9, table 8)', () => {
  const table = (id: string) => publishedCase<object, Table>('wire-awg', id).expected.rows;

  test.each(table('formula'))(
    'gauge %d',
    (gauge, inches, circularMils, mm, mm2, milliohms, ohmsPer1000Feet) => {
      near(wireDiameterMm(gauge), mm, 1e-9);
      near(wireDiameterMm(gauge) / 25.4, inches, 1e-9);
      near((wireDiameterMm(gauge) / 0.0254) ** 2, circularMils, 1e-9);
      near(wireAreaMm2(gauge), mm2, 1e-9);
      near(wireOhmsPerMetre(gauge) * 1000, milliohms, 1e-9);
      near(wireOhmsPerMetre(gauge) * FEET_1000_METRES, ohmsPer1000Feet, 1e-9);
    },
  );

  test.each(table('printed-20C'))('gauge %d as printed at 20 °C', (gauge, ohms) =>
    near(wireOhmsPerMetre(gauge) * FEET_1000_METRES, ohms, 6e-4),
  );

  test.each(table('nec-chapter-9-table-8'))('gauge %d as printed at 75 °C', (gauge, circularMils, solid) => {
    near(wireOhmsPerMetre(gauge, 75) * FEET_1000_METRES, solid, 0.012);
    near((wireDiameterMm(gauge) / 0.0254) ** 2, circularMils, 2e-3);
  });

  test('voltage drop', () => {
    const code = publishedCase<Figures, Figures>('wire-awg', 'voltage-drop-nec');
    near(
      voltageDrop(code.inputs.current, code.inputs.ohmPer1000Feet / 1000, code.inputs.oneWayFeet),
      code.expected.drop,
      1e-9,
    );
    const formula = publishedCase<Figures, Figures>('wire-awg', 'voltage-drop-formula-20C');
    const perMetre = wireOhmsPerMetre(formula.inputs.awg);
    near(voltageDrop(1, perMetre, formula.inputs.oneWayMetres), formula.expected.loopResistance, 1e-9);
    const drop = voltageDrop(formula.inputs.current, perMetre, formula.inputs.oneWayMetres);
    near(drop, formula.expected.drop, 1e-9);
    near((100 * drop) / formula.inputs.supply, formula.expected.percentOfSupply, 1e-9);
  });
});

describe('rest voltage of flooded batteries (Battery Council International)', () => {
  const table = (id: string) =>
    publishedCase<object, Table>('battery-open-circuit-voltage', id).expected.rows;

  test.each(table('bci-flooded'))('%d percent at %d V', (percent, volts) =>
    expect(batteryCharge(volts)).toBe(percent / 100),
  );

  test('between the rows', () => {
    const { inputs, expected } = publishedCase<{ volt: number[] }, { stateOfChargePercent: number[] }>(
      'battery-open-circuit-voltage',
      'interpolation',
    );
    allWithin(
      inputs.volt.map((volts) => 100 * batteryCharge(volts)),
      expected.stateOfChargePercent,
      1e-9,
    );
  });

  // The rounder figures of a rule of thumb lie 0.03 to 0.06 V lower, its empty battery 0.29 V.
  test.each(table('rounded-table').filter(([percent]) => percent > 0))(
    'rule of thumb: %d percent at %d V',
    (percent, volts) => allWithin([batteryCharge(volts)], [percent / 100], 0.1),
  );
});
