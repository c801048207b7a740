import { describe, expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { ONE_MOTOR, sideOf, traceOf } from '../support/handMade.ts';
import { heldRecording } from '../support/heldRecording.ts';
import { done } from '../support/measured.ts';

/**
 * A ball screw on a servo, as the public rig's is: it holds its load with a current of its own and moves it with twice that,
 * without any start to speak of.
 */
const HELD_AMPS = 0.36;
const MOVES_S = 5;
const RATE_HZ = 25;

interface Drive {
  readonly heldBeforeS: number;
  readonly heldAfterS: number;
  /** What it draws at its usual speed, amperes. */
  readonly movingAmps: number;
  /** Its speed as a part of the usual one, by the part of its time that is over. */
  readonly speed: (part: number) => number;
}

const AT_ONE_SPEED = () => 1;
const AS_A_SINE = (part: number) => Math.sin(Math.PI * part);

/** Friction comes with the first movement, the rest of the current with the speed; holding is as noisy as on the rig. */
function recorded({ heldBeforeS, heldAfterS, movingAmps, speed }: Drive, seed: number) {
  const random = new Random(seed);
  const amps = Float64Array.from(
    { length: Math.round((heldBeforeS + MOVES_S + heldAfterS) * RATE_HZ) },
    (_, i) => {
      const sinceS = i / RATE_HZ - heldBeforeS;
      const part = sinceS / MOVES_S;
      if (part < 0 || part >= 1) return HELD_AMPS + random.normal(0, 0.06);
      const adds = movingAmps - HELD_AMPS;
      const sets = 0.25 * Math.exp(-sinceS / 0.1);
      const moves = speed(part) < 0.2 ? 0 : 0.5 + 0.5 * speed(part);
      return HELD_AMPS + adds * moves + sets * moves + random.normal(0, 0.045);
    },
  );
  return { side: 'main', timesS: amps.map((_, i) => i / RATE_HZ), amps };
}

const measured = (drive: Drive, seed: number) =>
  done(measureStroke(traceOf([recorded(drive, seed)]), ONE_MOTOR)).sides.main;

const SEEDS = Array.from({ length: 40 }, (_, index) => index + 1);

describe('a motor that is held in place', () => {
  test.each([
    { movingAmps: 0.7, held: 0.3 },
    { movingAmps: 0.7, held: 0.5 },
    { movingAmps: 0.7, held: 1 },
    { movingAmps: 1.15, held: 0.5 },
    { movingAmps: 1.15, held: 2.5 },
  ])('draws $movingAmps A as it moves, though its record holds $held s of that at either end', (each) => {
    const { movingAmps, held } = each;
    for (const seed of SEEDS) {
      const drive = { heldBeforeS: held, heldAfterS: held, movingAmps, speed: AT_ONE_SPEED };
      const { offsetAmps, runningAmps } = measured(drive, seed);
      expect(offsetAmps).toBeNull();
      expect(Math.abs(runningAmps / movingAmps - 1)).toBeLessThan(0.05);
    }
  });

  test.each([
    { movingAmps: 0.75, heldBeforeS: 3, heldAfterS: 0 },
    { movingAmps: 0.75, heldBeforeS: 0, heldAfterS: 3 },
    { movingAmps: 1.15, heldBeforeS: 2, heldAfterS: 2.5 },
  ])(
    'is driven while it moves only: $heldBeforeS s before and $heldAfterS s after are none of it',
    (held) => {
      for (const seed of SEEDS) {
        const { durationS, phases } = measured({ ...held, speed: AT_ONE_SPEED }, seed);
        expect(Math.abs(phases.startS - held.heldBeforeS)).toBeLessThan(0.25);
        expect(Math.abs(durationS - MOVES_S)).toBeLessThan(0.25);
      }
    },
  );

  test.each([0.7, 1.15])(
    'sets out and arrives as slowly as a sine, drawing %f A in between, and for as long whether cut close or wide',
    (movingAmps) => {
      for (const seed of SEEDS) {
        const [close, wide] = [0.2, 2].map((heldS) =>
          measured({ heldBeforeS: heldS, heldAfterS: heldS, movingAmps, speed: AS_A_SINE }, seed),
        );
        expect(close.offsetAmps).toBeNull();
        expect(Math.abs(wide.durationS - close.durationS)).toBeLessThan(0.25);
        expect(Math.abs(wide.runningAmps / close.runningAmps - 1)).toBeLessThan(0.04);
        // It stands still for a fifteenth of its time at either end.
        expect(Math.abs(close.durationS - MOVES_S * (1 - 2 / 15))).toBeLessThan(0.25);
        expect(close.runningAmps).toBeGreaterThan(HELD_AMPS + 0.7 * (movingAmps - HELD_AMPS));
        expect(close.runningAmps).toBeLessThan(movingAmps * 1.03);
      }
    },
  );

  test.each([
    { heldS: 0.5, ringsAfterS: 0.15 },
    { heldS: 1, ringsAfterS: 0.15 },
    { heldS: 1.5, ringsAfterS: 0.15 },
    { heldS: 2, ringsAfterS: 0.15 },
  ])(
    'lasts as long where its record goes on for $heldS s and its drive rings after $ringsAfterS s',
    (each) => {
      const { heldS, ringsAfterS } = each;
      for (const seed of SEEDS) {
        const moves = [{ heldS: 0, movesS: MOVES_S, movingAmps: 0.75 }];
        const { timesS, amps, movesS } = heldRecording({ rateHz: RATE_HZ, moves, ringsAfterS }, seed);
        const end = Math.round((movesS[0][1] + heldS) * RATE_HZ);
        const side = { side: 'main', timesS: timesS.slice(0, end), amps: amps.slice(0, end) };
        const { sides } = done(measureStroke(traceOf([side]), ONE_MOTOR));
        expect(Math.abs(sides.main.durationS - MOVES_S)).toBeLessThan(0.4);
      }
    },
  );

  test.each([
    { what: 'rings after it stopped', from: 131, to: 140 },
    { what: 'rings as soon as it stopped', from: 128, to: 140 },
    { what: 'settles later', from: 160, to: 172 },
  ])('what it draws as it $what is no part of the movement', ({ from, to }) => {
    for (const seed of SEEDS) {
      const { timesS, amps, side } = recorded(
        { heldBeforeS: 0, heldAfterS: 3, movingAmps: 0.75, speed: AT_ONE_SPEED },
        seed,
      );
      const settles = amps.map((value, i) => (i >= from && i < to ? value + 0.4 : value));
      const { sides } = done(measureStroke(traceOf([{ side, timesS, amps: settles }]), ONE_MOTOR));
      expect(Math.abs(sides.main.durationS - MOVES_S)).toBeLessThan(0.25);
    }
  });
});

test('a clamp whose zero stands high before a small motor starts is read as before', () => {
  for (const seed of SEEDS) {
    const shape = {
      rateHz: 25,
      runningAmps: 2,
      inrushAmps: 9,
      stopAmps: 9,
      offsetAmps: 0.8,
      noiseAmps: 0.03,
    };
    const { sides } = done(measureStroke(traceOf([sideOf('main', { ...shape, seed })]), ONE_MOTOR));
    expect(sides.main.offsetAmps).toBeCloseTo(0.8, 1);
    expect(sides.main.runningAmps).toBeCloseTo(2, 1);
  }
});

test('nor is a motor held whose current leaks into a clamp beside its wire, whatever that reads at rest', () => {
  for (const seed of SEEDS) {
    const leaks = { rateHz: 25, runningAmps: 0.25, inrushAmps: 1.3, stopAmps: 1.2, noiseAmps: 0.02 };
    const trace = traceOf([sideOf('main', { ...leaks, offsetAmps: 0.3, seed })]);
    expect(measureStroke(trace, ONE_MOTOR).status).toBe('unusable');
  }
});
