import { Random } from '../../../../server/demo/simulator/random.ts';

/**
 * A ball screw on a servo, as the public rig's is, recorded all the while: it holds its load with a current of its own, moves it out
 * and back with more than that, each way with as much as its friction and its load need together, and rings once it arrived.
 */
export interface HeldRecording {
  readonly rateHz: number;
  readonly moves: readonly HeldMove[];
  readonly heldAmps?: number;
  readonly noiseAmps?: number;
  /** Of the sensor, amperes. */
  readonly offsetAmps?: number;
  readonly speed?: (part: number) => number;
  /** How long it seems to have come to rest before it rings, seconds. */
  readonly ringsAfterS?: number;
}

interface HeldMove {
  /** Held before it, seconds; 0.08: it turns at once. */
  readonly heldS: number;
  readonly movesS: number;
  readonly movingAmps: number;
}

/** The seconds of a recording, its amperes, and when each movement begins and ends. */
export interface Recorded {
  readonly timesS: Float64Array;
  readonly amps: Float64Array;
  readonly movesS: readonly (readonly [fromS: number, toS: number])[];
}

const HELD_AFTER_S = 3;
/** Of the drive, which follows its command by a first order lag. */
const LAG_S = 0.06;
const RINGING_AMPS = 0.3;
const RINGS_S = 0.8;

export function heldRecording(of: HeldRecording, seed: number): Recorded {
  const {
    rateHz,
    moves,
    heldAmps = 0.36,
    noiseAmps = 0.045,
    offsetAmps = 0,
    speed = () => 1,
    ringsAfterS = 0.15,
  } = of;
  const random = new Random(seed);
  let endS = 0;
  const movesS = moves.map(({ heldS, movesS: lastsS }) => {
    const fromS = endS + heldS;
    endS = fromS + lastsS;
    return [fromS, endS] as const;
  });
  let amps = heldAmps;
  const all = Float64Array.from({ length: Math.round((endS + HELD_AFTER_S) * rateHz) }, (_, i) => {
    const atS = i / rateHz;
    const n = movesS.findIndex(([fromS, toS]) => atS >= fromS && atS < toS);
    const last = movesS.findLast(([, toS]) => atS >= toS);
    const target =
      n < 0
        ? heldAmps + ringing(atS - (last?.[1] ?? -10) - ringsAfterS)
        : driven(moves[n], atS - movesS[n][0]);
    amps += (target - amps) * Math.min(1, 1 / (rateHz * LAG_S));
    return amps + random.normal(0, noiseAmps) + offsetAmps;
  });
  return { timesS: all.map((_, i) => i / rateHz), amps: all, movesS };

  function driven({ movingAmps, movesS: lastsS }: HeldMove, sinceS: number): number {
    const moving = speed(sinceS / lastsS);
    const adds = movingAmps - heldAmps;
    const starts = 0.3 * Math.exp(-sinceS / 0.15);
    return heldAmps + (moving < 0.1 ? 0 : adds * (0.5 + 0.5 * moving) + starts);
  }
}

function ringing(sinceS: number): number {
  const part = sinceS / RINGS_S;
  return part > 0 && part < 1 ? RINGING_AMPS * Math.sin(Math.PI * part) : 0;
}
