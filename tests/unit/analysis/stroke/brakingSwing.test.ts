import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { withoutBraking } from '../../../../analysis/stroke/signal/brakingSwing.ts';
import type { SideTrace } from '../../../../analysis/trace.ts';
import { evenTimes, lastingS, ONE_MOTOR, PLAIN, type Shape, sideOf, traceOf } from '../support/handMade.ts';
import { done } from '../support/measured.ts';

/** A motor that is switched off as it runs, before it meets any stop. */
const SWITCHED_OFF: Partial<Shape> = {
  rateHz: 25,
  idleBeforeS: 0,
  idleAfterS: 0.9,
  movingS: 10,
  runningAmps: 6,
  inrushAmps: 13,
  stopAmps: null,
  noiseAmps: 0.1,
  stepAmps: 0.12,
};

/** The same with a current of `amps` against it that dies away, after each time at which it is switched off. */
function braked(changes: Partial<Shape>, amps: number, tauS = 0.12): SideTrace {
  const shape = { ...PLAIN, ...SWITCHED_OFF, ...changes };
  const offAtS = [
    ...shape.pauses.map(({ atS }) => ({ atS: shape.idleBeforeS + atS, forS: shape.pauses[0].forS })),
    { atS: lastingS(shape) - shape.idleAfterS, forS: shape.idleAfterS },
  ];
  const side = sideOf('main', shape);
  return {
    ...side,
    amps: side.amps.map((value, i) => {
      const off = offAtS.find(({ atS, forS }) => side.timesS[i] >= atS && side.timesS[i] < atS + forS);
      return off === undefined
        ? value
        : value - shape.sign * amps * Math.exp((off.atS - side.timesS[i]) / tauS);
    }),
  };
}

test.each([0.02, 0.04])('a swing that has died away within its first samples is one (%s s)', (tauS) => {
  for (const rateHz of [100, 200]) {
    const side = braked({ rateHz }, 45, tauS);
    const found = done(measureStroke(traceOf([side], null), ONE_MOTOR));
    expect([found.direction, found.doubts], `${rateHz} Hz`).toEqual(['extend', []]);
    expect(withoutBraking(side), `${rateHz} Hz`).not.toBe(side);
  }
});

test.each([
  { name: 'as it was recorded', changes: {} },
  { name: 'at 10 Hz', changes: { rateHz: 10 } },
  { name: 'at 200 Hz', changes: { rateHz: 200 } },
  { name: 'the other way', changes: { sign: -1 } },
  { name: 'with a zero of 1.5 A', changes: { offsetAmps: 1.5 } },
  { name: 'with a zero of -1.5 A', changes: { offsetAmps: -1.5 } },
  { name: 'with a rest before', changes: { idleBeforeS: 1 } },
  { name: 'with a pause', changes: { pauses: [{ atS: 5, forS: 1.5 }] } },
  { name: 'at last in a record that ends soon', changes: { idleAfterS: 0.2, idleBeforeS: 1 } },
  { name: 'in a short run with a long rest', changes: { movingS: 4, idleAfterS: 7 } },
] satisfies readonly { name: string; changes: Partial<Shape> }[])(
  'what a braked motor drives back is neither rest nor drive: $name',
  ({ changes }) => {
    const plain = done(measureStroke(traceOf([braked(changes, 0)]), ONE_MOTOR)).sides.main;
    for (const amps of [4, 8, 15, 30]) {
      const trace = traceOf([braked(changes, amps)], null);
      const found = done(measureStroke(trace, ONE_MOTOR));
      const { main } = found.sides;
      expect(found.doubts.filter(({ doubt }) => doubt !== 'offset')).toEqual([]);
      expect(found.direction).toBe('sign' in changes ? 'retract' : 'extend');
      expect(Math.abs(main.runningAmps / plain.runningAmps - 1)).toBeLessThan(0.04);
      expect(Math.abs(main.durationS - plain.durationS)).toBeLessThan(0.15);
      if (main.offsetAmps !== null)
        expect(Math.abs(main.offsetAmps - (plain.offsetAmps ?? 0))).toBeLessThan(0.2);
    }
  },
);

test.each([
  { name: 'a start, though the zero lies lower than the motor draws', offsetAmps: -2, runningAmps: 2.8 },
  { name: 'a start with the zero lower than half of that', offsetAmps: -1.5, runningAmps: 1.6 },
])('$name is no swing', ({ offsetAmps, runningAmps }) => {
  const side = sideOf('main', { ...PLAIN, idleBeforeS: 2, inrushAmps: 30, runningAmps, offsetAmps });
  expect(withoutBraking(side)).toBe(side);
});

test('a stroke that is followed by the other direction at once is left as it is', () => {
  const out = sideOf('main', { ...SWITCHED_OFF, idleAfterS: 0 });
  const back = sideOf('main', { ...SWITCHED_OFF, inrushAmps: 30, sign: -1 });
  const timesS = evenTimes(25, (out.amps.length + back.amps.length) / 25);
  const both = { side: 'main', timesS, amps: Float64Array.from([...out.amps, ...back.amps]) };
  expect(withoutBraking(both)).toBe(both);
});
