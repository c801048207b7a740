import type { HeldReading, SideMeasures } from '../../measures.ts';
import { DIRECTIONS, type Direction } from '../../trace.ts';
import type { CutMemory, HighestRead } from './cutMemory.ts';

/** Of the latest four strokes at least three must be cut. */
const LATEST = 4;
const FEWEST = 3;
/** Readings within this part of each other are one level: that allows for a step of eight bits and a moving zero. */
const ONE_LEVEL = 0.02;
/** Where only a fallen stall speaks for a cut, the readings must be this much the same. */
const SAME_LEVEL = 0.003;
/** A reading that stands higher by more than this part shows that nothing is cut there. */
const ABOVE = 0.04;
/** If the highest reading is no more than this many times the running current, most of the stroke reads the same. */
const ALL_FLAT = 1.02;
/** A reading above this many times the running current may be what the motor draws at standstill. */
const MAY_STALL = 1.6;
/**
 * Two readings within this part are the same recorded value, but for rounding. Of the latest strokes so many must have
 * it.
 */
const SAME_VALUE = 1e-6;
const HELD_OF = { amidNoise: { latest: 4, fewest: 3 }, coarse: { latest: 8, fewest: 6 } };
/**
 * How many steps of its readings a sensor's noise spans. From the first on it shows at any level; up to the second a
 * steady level may not show it: a rest between two steps flickers by half a step (0.53 by eight samples), however
 * little noise there is.
 */
const MANY_STEPS = 3;
const SEEN_STEPS = 0.55;

/**
 * Takes one more stroke of a side in, and answers whether its records are cut off. A sensor has one highest reading,
 * and nothing lies above it. A start that is held level for a moment, by a controller that lets the voltage rise
 * slowly, looks cut as well, but lies now higher and now lower with load and supply. `isCut`: whether this stroke by
 * itself looks cut; `fell`: whether its stall reads less than it did (`stopFell`), which tells where the start was not
 * recorded.
 *
 * If the readings have steps as coarse as the sensor's noise, any current at standstill is one value, at start and stop
 * alike, because both are V/R: then only the very same value counts, over more strokes.
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
  // A record cut at its running current is no start that is held. The direction counts by itself: a logger may be set
  // otherwise
  // for the other one.
  const own = memory.latest.filter((read) => read.direction === direction).slice(-LATEST);
  return isCut && now.amps <= ALL_FLAT * measured.runningAmps && isLevelOf(own, now, SAME_LEVEL);
}

/** Whether most of these strokes were cut where the latest one is, and none since the first of them reads more. */
function isLevelOf(latest: readonly HighestRead[], now: HighestRead, within: number): boolean {
  const cut = latest.filter(
    (read) => read.isCut && isOneLevel(read, now, within) && !isHeldElsewhere(read, now),
  );
  const since = latest.slice(latest.indexOf(cut[0]));
  return now.isCut && cut.length >= FEWEST && !since.some((read) => isAbove(read, now));
}

/**
 * Whether all held readings so far are one and the same value: then it may be the sensor whose range ends there, and
 * not the motor's current.
 */
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

/** Whether the latest strokes were held at the same value as the last of them, and none reads more. */
function isHeld(read: readonly HighestRead[]): boolean {
  const { held: now, isCut } = read[read.length - 1];
  // Where no noise shows, every steady current is one value: then only a stroke that looks cut by itself counts.
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
  // A slow start may stay below the cut, and the cut may leave no stall: then the running current may read highest.
  const running = isCut ? Math.max(...profile.map((amps) => amps ?? 0)) : 0;
  const amps = Math.max(inrushAmps, endStopAmps ?? 0, running);
  return { direction, amps, rawAmps: amps + (offsetAmps ?? 0), isCut, held: held ?? null };
}

/** Whether both were held at their highest, but at different readings: a sensor whose range ends has only one. */
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

/**
 * Whether two highest readings are one level, with the offset or without: a sensor cuts before the offset is taken off,
 * a logger may cut after.
 */
function isOneLevel(one: HighestRead, other: HighestRead, within: number): boolean {
  const near = (a: number, b: number) => Math.abs(a - b) <= within * Math.max(Math.abs(a), Math.abs(b));
  return near(one.amps, other.amps) || near(one.rawAmps, other.rawAmps);
}

function isAbove(one: HighestRead, other: HighestRead): boolean {
  return one.amps > (1 + ABOVE) * other.amps && one.rawAmps > (1 + ABOVE) * other.rawAmps;
}
