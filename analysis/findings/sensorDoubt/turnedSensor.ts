import { DIRECTIONS, type Direction } from '../../trace.ts';

/** The sign with which a side's current was recorded while it drives. */
export type Sign = 1 | -1;

/** What signs a side's current has had, by direction; plain numbers, so that the state is JSON. */
export interface SignMemory {
  usual: Record<Direction, { sign: Sign; strokes: number } | null>;
  latest: Record<Direction, Sign | null>;
  /** Strokes in a row since both directions read the other way round. */
  turnedRun: number;
}

/**
 * This many strokes tell the usual sign of a direction; after this many with the other sign that becomes the usual one.
 */
const FEWEST = 3;
const ADOPTED = 12;

/** No sign seen yet. */
export function beginSignMemory(): SignMemory {
  return { usual: { extend: null, retract: null }, latest: { extend: null, retract: null }, turnedRun: 0 };
}

/**
 * Takes a stroke's sign in and answers whether the sensor has been turned round: it reads both directions with the
 * other sign than it used to. If one direction alone changed, the logger has begun or ceased to send signs.
 */
export function isTurned(memory: SignMemory, direction: Direction, sign: Sign): boolean {
  memory.latest[direction] = sign;
  const known = memory.usual[direction];
  if (known?.sign === sign) known.strokes = Math.min(known.strokes + 1, FEWEST);
  else if (known === null || known.strokes < FEWEST) memory.usual[direction] = { sign, strokes: 1 };
  const turned = DIRECTIONS.every((way) => {
    const usual = memory.usual[way];
    return usual !== null && usual.strokes >= FEWEST && memory.latest[way] === -usual.sign;
  });
  memory.turnedRun = turned ? memory.turnedRun + 1 : 0;
  if (memory.turnedRun < ADOPTED) return turned;
  Object.assign(memory, beginSignMemory());
  return false;
}

/** Whether a sensor is known to read the two directions with opposite signs. */
export function tellsSign({ usual: { extend, retract } }: SignMemory): boolean {
  if (extend === null || retract === null) return false;
  return extend.sign !== retract.sign && Math.min(extend.strokes, retract.strokes) >= FEWEST;
}
