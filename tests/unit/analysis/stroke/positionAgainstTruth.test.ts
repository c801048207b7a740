import { expect, test } from 'vitest';
import { median } from '../../../../analysis/statistics/median.ts';
import { healthyCondition } from '../../../../server/demo/simulator/condition.ts';
import { drawRoom } from '../../../../server/demo/simulator/drawRoom.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { measureSimulated } from '../support/simulated.ts';

/** Rooms of every size, speed, rate and noise; places and pauses drawn anew for each. */
const SEEDS = Array.from({ length: 24 }, (_, i) => i + 1);
const ROWS = [
  { supplyRateHz: 10, within: 0.02, pausing: false },
  { supplyRateHz: 10, within: 0.02, pausing: true },
  { supplyRateHz: null, within: 0.04, pausing: false },
  { supplyRateHz: null, within: 0.04, pausing: true },
] as const;

test.each(ROWS)(
  'a proud fastener stands where it is: supply at $supplyRateHz Hz, pauses: $pausing',
  ({ supplyRateHz, within, pausing }) => {
    const errors: number[] = [];
    for (const seed of SEEDS) {
      const random = new Random(seed);
      const room = drawRoom(seed, { supplyRateHz });
      const direction = random.chance(0.5) ? 'extend' : 'retract';
      const position = random.uniform(0.12, 0.88);
      const pauses = pausing ? [{ position: random.uniform(0.1, 0.9), durationS: 2 }] : [];
      // A room that starts again on top of a peak hides it behind its inrush.
      if (pauses.some((pause) => Math.abs(pause.position - position) < 0.15)) continue;
      const widthMetres = Math.max(0.01, 0.25 * room.load.speedMetresPerS);
      const bumps = [{ sideIndex: 0, position, widthMetres, part: 1.5 }];
      const { analysis } = measureSimulated(room, direction, { bumps, pauses }, seed);
      const { spikes } = analysis.sides[room.facts.sides[0]];
      expect(spikes, `room ${seed}`).not.toEqual([]);
      const error = Math.min(...spikes.map((spike) => Math.abs(spike.position - position)));
      expect(error, `room ${seed} at ${position}`).toBeLessThan(within);
      errors.push(error);
    }
    expect(errors.length).toBeGreaterThan(12);
    expect(median(errors)).toBeLessThan(within / 2);
  },
);

test('the phases begin and end when the motor started, met its stop and was switched off', () => {
  for (const seed of SEEDS) {
    const room = drawRoom(seed);
    const direction = seed % 2 === 0 ? 'extend' : 'retract';
    const { analysis, truth } = measureSimulated(room, direction, {}, seed);
    expect(analysis.direction).toBe(direction);
    for (const side of truth.sides) {
      const { phases, durationS, spikes } = analysis.sides[side.side];
      const within = 0.12 + 1.5 / room.logging.rateHz;
      expect(Math.abs(phases.startS - side.phases.startS), `start ${seed}`).toBeLessThan(within);
      expect(Math.abs(phases.endS - side.phases.endS), `end ${seed}`).toBeLessThan(within);
      const stopS = side.phases.endStopStartS ?? side.phases.endS;
      expect(phases.endStopStartS, `stop ${seed}`).not.toBeNull();
      expect(Math.abs((phases.endStopStartS ?? 0) - stopS), `stop ${seed}`).toBeLessThan(within + 0.15);
      const trueS = stopS - side.phases.startS;
      expect(Math.abs(durationS / trueS - 1), `duration ${seed}`).toBeLessThan(0.03);
      expect(spikes, `spikes ${seed}`).toEqual([]);
    }
  }
});

test('the running current is the median of the true one, whatever the clamp adds to it', () => {
  for (const seed of SEEDS) {
    const room = drawRoom(seed);
    const offsets = new Random(seed);
    const { analysis, truth } = measureSimulated(room, 'extend', {}, seed);
    const resting = { ...healthyCondition(room, 'extend').logger, idleBeforeS: 1.2, idleAfterS: 1.2 };
    const shifted = measureSimulated(
      room,
      'extend',
      {
        logger: resting,
        sensors: room.logging.scales.map((scale) => ({
          offsetAmps: offsets.uniform(-1, 1),
          offsetDriftAmps: 0,
          scale,
          noiseAmps: room.logging.noiseAmps,
          stepAmps: room.logging.stepAmps,
          rangeAmps: room.logging.rangeAmps,
          missed: 0.01,
          gap: null,
          off: false,
        })),
      },
      seed,
    ).analysis;
    truth.sides.forEach(({ side, timesS, trueAmps, phases }, index) => {
      const running = trueAmps.filter(
        (_, i) => timesS[i] > phases.inrushEndS && timesS[i] < (phases.endStopStartS ?? phases.endS),
      );
      const expected = room.logging.scales[index] * median(running);
      const slack = 0.01 * expected + 0.15 * room.logging.noiseAmps + room.logging.stepAmps / 2;
      expect(Math.abs(analysis.sides[side].runningAmps - expected), `room ${seed}`).toBeLessThan(slack);
      expect(Math.abs(shifted.sides[side].runningAmps - expected), `shifted ${seed}`).toBeLessThan(
        slack + 0.05,
      );
    });
  }
});

test('the mean supply while running is the true one', () => {
  for (const seed of SEEDS.slice(0, 10)) {
    const { analysis, truth } = measureSimulated(drawRoom(seed, { supplyRateHz: 10 }), 'extend', {}, seed);
    expect(Math.abs((analysis.supplyVolts ?? 0) - truth.runningVolts)).toBeLessThan(0.12);
  }
});

test('a change of the sampling rate moves no place by more than a hundredth of the travel', () => {
  for (const seed of SEEDS.slice(0, 8)) {
    const places = [20, 50, 200].map((rateHz) => {
      const room = drawRoom(seed, { supplyRateHz: 10, rateHz, noiseAmps: 0.05 });
      const widthMetres = Math.max(0.012, 0.3 * room.load.speedMetresPerS);
      const bumps = [{ sideIndex: 0, position: 0.4, widthMetres, part: 1.5 }];
      const { analysis } = measureSimulated(room, 'extend', { bumps }, seed);
      return analysis.sides[room.facts.sides[0]].spikes[0]?.position ?? Number.NaN;
    });
    expect(Math.max(...places) - Math.min(...places), `room ${seed}`).toBeLessThan(0.01);
  }
});
