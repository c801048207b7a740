import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { ROOM, sideOf } from '../support/handMade.ts';
import { done } from '../support/measured.ts';

/** A motor that draws 6 A on its way and 30 A at standstill, and what is changed meanwhile: from, for so long, times so much. */
const [VOLTS, OHMS, LOAD_AMPS, FREE_AMPS] = [12.6, 0.42, 6, 1];
const STEP_S = 0.001;
const [BEFORE_S, RUNS_S, STALLS_S] = [1, 20, 0.5];
interface Change {
  readonly atS: number;
  readonly forS: number;
  readonly times: number;
}

interface Told {
  readonly rateHz: number;
  /** The motor's with what it moves, seconds. */
  readonly inertiaS: number;
  /** A clamp about the supply's wire sees the part of the time in which the motor is switched on. */
  readonly clampsSupply?: boolean;
  readonly duties?: readonly Change[];
  readonly loads?: readonly Change[];
}

/**
 * One side by the motor's equations, `V = I R + Ke ω` and `J dω/dt = Kt (I - load / Kt)`, with `Ke ω` as the speed and
 * `J R / (Ke Kt)` as the inertia; its driver passes no current backwards. Each sample is the mean over its time.
 */
function frontOf({ rateHz, inertiaS, clampsSupply = false, duties = [], loads = [] }: Told) {
  const changed = (changes: readonly Change[], timeS: number) =>
    changes.find(({ atS, forS }) => timeS >= atS && timeS < atS + forS)?.times ?? 1;
  const random = new Random(1);
  const perSample = Math.round(1 / rateHz / STEP_S);
  const count = Math.round((2 * BEFORE_S + RUNS_S + STALLS_S) * rateHz);
  let speedVolts = 0;
  const amps = Float64Array.from({ length: count }, (_, sample) => {
    let sum = 0;
    for (let step = 0; step < perSample; step++) {
      const timeS = (sample * perSample + step) * STEP_S - BEFORE_S;
      if (timeS < 0 || timeS > RUNS_S + STALLS_S) continue;
      const duty = changed(duties, timeS);
      const current = Math.max(0, (duty * VOLTS - speedVolts) / OHMS);
      const load = Math.max(FREE_AMPS, LOAD_AMPS * changed(loads, timeS));
      const stands = timeS > RUNS_S;
      speedVolts = stands ? 0 : Math.max(0, speedVolts + ((current - load) * OHMS * STEP_S) / inertiaS);
      sum += clampsSupply ? duty * current : current;
    }
    return sum / perSample + random.normal(0, 0.05);
  });
  const timesS = amps.map((_, i) => i / rateHz);
  const rear = sideOf('rear', { rateHz });
  return done(
    measureStroke(
      { direction: 'extend', sides: [{ side: 'front', timesS, amps }, rear], supply: null, ambientC: null },
      ROOM,
    ),
  ).sides.front;
}

const everyThird = (forS: number, times: number): Change[] =>
  [3.1, 6.2, 9.1, 12.3, 15.2].map((atS) => ({ atS, forS, times }));
const AS_LOGGED = [10, 25, 50, 200].flatMap((rateHz) =>
  [false, true].map((clampsSupply) => ({ rateHz, clampsSupply })),
);

test.each(AS_LOGGED)(
  'at $rateHz samples a second a side that is slowed for a moment and then let run again has neither peaks nor dips (supply: $clampsSupply)',
  (logger) => {
    for (const inertiaS of [0.06, 0.15]) {
      for (const duties of [everyThird(0.4, 0.7), everyThird(0.25, 0.8), everyThird(0.9, 0.6)]) {
        const { spikes, dips, profile } = frontOf({ ...logger, inertiaS, duties });
        expect({ spikes, dips }).toEqual({ spikes: [], dips: [] });
        const known = profile.filter((bin) => bin !== null);
        expect(known.length).toBeGreaterThan(32);
        for (const bin of known) expect(Math.abs(bin / LOAD_AMPS - 1)).toBeLessThan(0.2);
      }
    }
  },
);

test.each(AS_LOGGED.filter(({ rateHz }) => rateHz >= 50))(
  'at $rateHz samples a second the starts of a train of such moments are no peaks either (supply: $clampsSupply)',
  (logger) => {
    const duties = [4, 9, 14].flatMap((atS) =>
      [0, 0.3, 0.6, 0.9].map((later) => ({ atS: atS + later, forS: 0.15, times: 0.85 })),
    );
    expect(frontOf({ ...logger, inertiaS: 0.12, duties }).spikes).toEqual([]);
  },
);

test.each(AS_LOGGED)(
  'at $rateHz samples a second what catches is a peak, also between such moments, and also where the load is lost just before it (supply: $clampsSupply)',
  (logger) => {
    const duties = everyThird(0.3, 0.7);
    const loads = [{ atS: 7.7, forS: 0.3, times: 2.2 }];
    for (const told of [{ loads }, { loads, duties }]) {
      const { spikes } = frontOf({ ...logger, inertiaS: 0.1, ...told });
      expect(spikes).toHaveLength(1);
      expect(Math.abs(spikes[0].position - 7.9 / RUNS_S)).toBeLessThan(0.03);
    }
    const slips = [
      { atS: 7.4, forS: 0.2, times: 0 },
      { atS: 7.6, forS: 0.5, times: 2.5 },
    ];
    expect(frontOf({ ...logger, inertiaS: 0.1, loads: slips }).spikes).toHaveLength(1);
  },
);
