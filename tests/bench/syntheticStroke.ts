const RATE_HZ = 125;
const SAMPLES = 1250;
const SIDES = ['front', 'rear'];
export const SAMPLES_A_STROKE = SIDES.length * SAMPLES;

/** A repeatable stream of numbers in (0, 1) (mulberry32, T. Ettinger, public domain). */
export function randomNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296 + 1e-12;
  };
}

/** One side of ten seconds at 125 Hz in whole milliamperes: rest, inrush, running with ripple, end stop, rest. */
export function syntheticMilliamps(random: () => number, runningAmps = 9): number[] {
  const phase = 7 * random();
  return Array.from({ length: SAMPLES }, (_, i) => {
    const s = i / RATE_HZ;
    const noise = 0.03 * Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
    return Math.round(1000 * (levelAt(s, runningAmps, phase) + noise));
  });
}

function levelAt(s: number, runningAmps: number, phase: number): number {
  if (s < 0.4 || s > 9.7) return 0.02;
  if (s < 0.6) return 3 * runningAmps * (1 - (s - 0.4) / 0.3);
  if (s > 9.2) return 2.5 * runningAmps;
  return runningAmps + 0.2 * Math.sin(29 * s + phase);
}

/** A stroke of two sides as a logger sends it: 2 x 1,250 samples at 1 mA. */
export function syntheticStroke(roomId: string, number: number, random: () => number) {
  const side = (name: string) => ({
    side: name,
    rateHz: RATE_HZ,
    amps: syntheticMilliamps(random).map((milliamps) => milliamps / 1000),
  });
  return {
    key: `bench ${number}`,
    roomId,
    direction: number % 2 === 0 ? 'extend' : 'retract',
    startedAt: new Date(Date.UTC(2026, 0, 1) + number * 60_000).toISOString(),
    sides: SIDES.map(side),
  };
}
