/** How one side's motor is to draw in an invented stroke. Amperes, seconds. */
export interface SideShape {
  readonly side: string;
  readonly runningAmps: number;
  /** A short peak at this place of the travel (0 to 1), if any. */
  readonly spikeAt?: number;
}

const RATE_HZ = 50;
const REST_S = 0.6;
const RUN_S = 20;
const END_STOP_S = 0.5;
const INRUSH_AMPS = 24;

/** A fixed sequence that looks like a sensor's noise, the same in every run: -0.5 to 0.5. */
function noise(seed: number): () => number {
  let state = (seed * 7919 + 17) % 2_147_483_647;
  return () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647 - 0.5;
  };
}

function ampsAt(sinceStartS: number, shape: SideShape, direction: 'extend' | 'retract'): number {
  if (sinceStartS < 0 || sinceStartS > RUN_S + END_STOP_S) return 0;
  if (sinceStartS > RUN_S) return INRUSH_AMPS * 0.9;
  const passed = sinceStartS / RUN_S;
  const place = direction === 'extend' ? passed : 1 - passed;
  const spike = shape.spikeAt !== undefined && Math.abs(place - shape.spikeAt) < 0.008 ? 8 : 0;
  const starting = (INRUSH_AMPS - shape.runningAmps) * Math.exp(-sinceStartS / 0.12);
  return shape.runningAmps + starting + spike + 0.3 * Math.sin(place * 9);
}

/** The body of one invented stroke as a logger would send it. */
export function strokeBody(
  roomId: string,
  key: string,
  startedAt: Date,
  direction: 'extend' | 'retract',
  sides: readonly SideShape[],
) {
  const samples = Math.round((REST_S + RUN_S + END_STOP_S + REST_S) * RATE_HZ);
  // By its time: keys hold the ids of rooms, which are others in every run.
  const seed =
    [...startedAt.toISOString()].reduce((sum, letter) => sum * 31 + letter.charCodeAt(0), 11) % 100_003;
  const jitter = noise(seed);
  const wander = 1 + 0.03 * jitter();
  return {
    key,
    roomId,
    direction,
    startedAt: startedAt.toISOString(),
    sides: sides.map((shape) => {
      const drifted = { ...shape, runningAmps: shape.runningAmps * wander };
      const amps = Array.from(
        { length: samples },
        (_, i) =>
          Math.round((ampsAt(i / RATE_HZ - REST_S, drifted, direction) + 0.15 * jitter()) * 1000) / 1000,
      );
      return { side: shape.side, rateHz: RATE_HZ, amps };
    }),
    supply: {
      rateHz: 10,
      volts: Array.from({ length: Math.ceil(samples / 5) }, () => 12.6 + 0.05 * jitter()),
    },
    ambientC: 20,
  };
}
