import type { HeldReading, SideMeasures } from '../../measures.ts';
import { DIRECTIONS, type Direction } from '../../trace.ts';
import type { CutMemory, HighestRead } from './cutMemory.ts';

/** Of so many strokes, at least so many are cut. */
const LATEST = 4;
const FEWEST = 3;
/** Readings within this part of each other are one level: a step of eight bits, and what a zero does. */
const ONE_LEVEL = 0.02;
/** Where nothing but a stall that fell speaks for a cut, they must be one and the same. */
const SAME_LEVEL = 0.003;
/** A reading that stands higher by more than this part shows that nothing is cut there. */
const ABOVE = 0.04;
/** Most of a stroke reads the same where its highest reading is no more than so many times its running current. */
const ALL_FLAT = 1.02;
/** What stands so many times above the running current may be all that a motor draws at standstill. */
const MAY_STALL = 1.6;
/** The same recorded value, but for how numbers are kept: of so many strokes, so many must have it. */
const SAME_VALUE = 1e-6;
const HELD_OF = { amidNoise: { latest: 4, fewest: 3 }, coarse: { latest: 8, fewest: 6 } };
/**
 * Steps of its readings that a sensor's noise spans: from so many on any level shows it, and below so many a steady one does not.
 * A rest between two steps flickers by half of one, 0.53 by eight samples, however little noise there is.
 */
const MANY_STEPS = 3;
const SEEN_STEPS = 0.55;

/**
 * Takes one more stroke of a side in, and answers whether its records are cut off: a sensor has one highest reading, and
 * once it has it, nothing lies above. A start that is held level for a moment, by a controller that lets the voltage
 * rise slowly, looks cut as well, but stands now higher and now lower with the load and the supply. `isCut`: the stroke by
 * itself looks so; `fell`: its stall reads less than it did (`stopFell`), as where the start was not recorded.
 *
 * In steps as coarse as the sensor's noise any current at standstill is one value, at the start and at the stop alike, for
 * both are V/R: there only the very same value counts, over more strokes.
 */
export function isCutOff(
  memory: CutMemory,
  measured: SideMeasures,
  direction: Direction,
  isCut: boolean,
  fell: boolean,
): boolean {
  const now = highestOf(measured, direction, isCut || fell);
  memory.latest = [...memory.latest, now].slice(-DIRECTIONS.length * LATEST);
  if (isHeld(memory.latest)) return true;
  if (!fell && isCoarse(now) && now.amps > MAY_STALL * measured.runningAmps) return false;
  const within = isCut ? ONE_LEVEL : SAME_LEVEL;
  if (isLevelOf(memory.latest.slice(-LATEST), now, within)) return true;
  // What is cut below its running current is no start that is held: a logger may well be set otherwise for the other way.
  const own = memory.latest.filter((read) => read.direction === direction).slice(-LATEST);
  return isCut && now.amps <= ALL_FLAT * measured.runningAmps && isLevelOf(own, now, SAME_LEVEL);
}

/** Whether most of these strokes were cut where the latest one is, and none of them since reads more. */
function isLevelOf(latest: readonly HighestRead[], now: HighestRead, within: number): boolean {
  const cut = latest.filter(
    (read) => read.isCut && isOneLevel(read, now, within) && !isHeldElsewhere(read, now),
  );
  const since = latest.slice(latest.indexOf(cut[0]));
  return now.isCut && cut.length >= FEWEST && !since.some((read) => isAbove(read, now));
}

/** Whether all that was held so far was one and the same value: then a sensor may come to its end there, and not the motor. */
export function allHeldAtOneValue({ latest }: CutMemory): boolean {
  const held = latest.flatMap((read) => read.held ?? []);
  return held.length >= 2 && held.every((one) => isSameValue(one, held[0]));
}

function isSameValue(one: HeldReading | null, other: HeldReading | null): boolean {
  if (one === null || other === null) return false;
  return Math.abs(one.amps - other.amps) <= SAME_VALUE * Math.abs(other.amps);
}

function isCoarse({ held }: HighestRead): boolean {
  return held !== null && held.noiseSteps < MANY_STEPS;
}

/** Whether the latest strokes were held at the one value that the last of them was, and none reads more. */
function isHeld(read: readonly HighestRead[]): boolean {
  const { held: now, isCut } = read[read.length - 1];
  // Where no noise is seen every steady current is one value, and a start is what tells.
  if (now === null || !(isCut || now.noiseSteps > SEEN_STEPS)) return false;
  const { latest, fewest } = now.noiseSteps < MANY_STEPS ? HELD_OF.coarse : HELD_OF.amidNoise;
  const strokes = read.slice(-latest);
  const isSame = ({ held }: HighestRead) => isSameValue(held, now);
  const since = strokes.slice(strokes.findIndex(isSame));
  const others = since.filter((stroke) => !isSame(stroke));
  const isOther = (stroke: HighestRead) =>
    stroke.held !== null || stroke.rawAmps > (1 + SAME_VALUE) * now.amps;
  return since.length - others.length >= fewest && !others.some(isOther);
}

function highestOf(
  { inrushAmps, endStopAmps, profile, offsetAmps, held }: SideMeasures,
  direction: Direction,
  isCut: boolean,
): HighestRead {
  // Where a start that rises slowly stays below the cut, and the stall is cut to no stall, what was drawn last stands highest.
  const running = isCut ? Math.max(...profile.map((amps) => amps ?? 0)) : 0;
  const amps = Math.max(inrushAmps, endStopAmps ?? 0, running);
  return { direction, amps, rawAmps: amps + (offsetAmps ?? 0), isCut, held: held ?? null };
}

/** Whether both were held at their highest, each at a reading of its own: a sensor that comes to its end has one. */
function isHeldElsewhere(one: HighestRead, other: HighestRead): boolean {
  if (one.held === null || other.held === null) return false;
  return !isOneLevel(
    { ...one, ...heldAt(one, one.held) },
    { ...other, ...heldAt(other, other.held) },
    SAME_LEVEL,
  );
}

function heldAt({ amps, rawAmps }: HighestRead, held: HeldReading): { amps: number; rawAmps: number } {
  return { amps: held.amps - (rawAmps - amps), rawAmps: held.amps };
}

/** A sensor that comes to its end is cut before its zero is taken off; one whose logger holds it, after. */
function isOneLevel(one: HighestRead, other: HighestRead, within: number): boolean {
  const near = (a: number, b: number) => Math.abs(a - b) <= within * Math.max(Math.abs(a), Math.abs(b));
  return near(one.amps, other.amps) || near(one.rawAmps, other.rawAmps);
}

function isAbove(one: HighestRead, other: HighestRead): boolean {
  return one.amps > (1 + ABOVE) * other.amps && one.rawAmps > (1 + ABOVE) * other.rawAmps;
}
