import fc from 'fast-check';
import { expect, test } from 'vitest';
import { batteryCharge } from '../../../analysis/motor/battery.ts';
import { copperFactor, copperTemperatureC } from '../../../analysis/motor/copper.ts';
import { aliasedHz, ripplesPerRevolution, travelPerTurnMetres } from '../../../analysis/motor/gearMesh.ts';
import { ampsPerCount, shuntOhms } from '../../../analysis/motor/shunt.ts';
import { bestEfficiency, shaftTorque, stallAmps, steadyState } from '../../../analysis/motor/steadyState.ts';
import { voltageDrop } from '../../../analysis/motor/wire.ts';

const motor = { ohms: 0.5, constant: 0.05, noLoadAmps: 1.5 };

test('power in is power out, in the winding and in friction', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 0.8, noNaN: true }),
      fc.double({ min: 10, max: 15, noNaN: true }),
      (load, volts) => {
        const { amps, radiansPerSecond, efficiency } = steadyState(motor, volts, load);
        const shaft = load * radiansPerSecond;
        const losses = amps * amps * motor.ohms + motor.noLoadAmps * motor.constant * radiansPerSecond;
        expect(shaft + losses).toBeCloseTo(volts * amps, 9);
        expect(efficiency).toBeLessThanOrEqual(bestEfficiency(motor, volts) + 1e-12);
        expect(shaftTorque(motor, amps)).toBeCloseTo(load, 12);
      },
    ),
  );
});

test('a weak supply slows the motor and leaves its current; friction raises the current', () => {
  expect(steadyState(motor, 10.5, 0.2).amps).toBe(steadyState(motor, 12.6, 0.2).amps);
  expect(steadyState(motor, 10.5, 0.2).radiansPerSecond).toBeLessThan(
    steadyState(motor, 12.6, 0.2).radiansPerSecond,
  );
  expect(steadyState(motor, 12.6, 0.3).amps).toBeGreaterThan(steadyState(motor, 12.6, 0.2).amps);
});

test('temperature from resistance undoes resistance from temperature', () => {
  expect(copperTemperatureC(0.5 * copperFactor(63), 0.5)).toBeCloseTo(63, 10);
  expect(copperFactor(25, 60) * copperFactor(60, 25)).toBeCloseTo(1, 12);
  expect(copperTemperatureC(-1, 0.5)).toBeNaN();
});

test('a gear of 10 teeth on a rack of 9.5 mm turns once in 95 mm', () => {
  expect(travelPerTurnMetres(10, 9.5)).toBeCloseTo(0.095, 12);
  expect(() => travelPerTurnMetres(0, 9.5)).toThrow(RangeError);
});

test('an alias lies between 0 and half the rate', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1e5, noNaN: true }),
      fc.double({ min: 1, max: 5000, noNaN: true }),
      (hz, rate) => {
        expect(aliasedHz(hz, rate)).toBeLessThanOrEqual(rate / 2 + 1e-9);
        if (hz <= rate / 2) expect(aliasedHz(hz, rate)).toBeCloseTo(hz, 9);
      },
    ),
  );
});

test('charge rises with rest voltage and stays within 0 and 1', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 14, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (volts, more) => {
        expect(batteryCharge(volts + more)).toBeGreaterThanOrEqual(batteryCharge(volts));
        expect(batteryCharge(volts)).toBeGreaterThanOrEqual(0);
        expect(batteryCharge(volts)).toBeLessThanOrEqual(1);
      },
    ),
  );
  expect(batteryCharge(Number.NaN)).toBeNaN();
});

test('misuse throws', () => {
  expect(() => stallAmps({ ohms: 0 }, 12)).toThrow(RangeError);
  expect(() => steadyState({ ...motor, constant: 0 }, 12, 0)).toThrow(RangeError);
  expect(() => ripplesPerRevolution(2, 7.5)).toThrow(RangeError);
  expect(() => aliasedHz(1, 0)).toThrow(RangeError);
  expect(() => shuntOhms({ ratedAmps: 0, ratedMillivolts: 75 })).toThrow(RangeError);
  expect(() => ampsPerCount(0, { bits: 12, referenceVolts: 3.3, gain: 20 })).toThrow(RangeError);
  expect(() => voltageDrop(1, -1, 1)).toThrow(RangeError);
});
