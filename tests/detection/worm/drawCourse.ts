import type { Random } from '../../../server/demo/simulator/random.ts';
import { type Side, TRAVEL_BINS } from './room.ts';

/** What a whole room has in common along its travel. */
export interface RoomCourse {
  /** Change of the rubbing from retracted to extended, as the room comes out over its rollers. */
  readonly comingOut: number;
  /** Rubbing of the retract over that of the extend. */
  readonly backFactor: number;
  /** A floor that comes down flush as the room arrives: where its ramp lies, and what it takes to climb it. */
  readonly ramp: { readonly from: number; readonly to: number; readonly climb: number } | null;
  /** Squeezing the seals at either end. */
  readonly outerSeal: number;
  readonly innerSeal: number;
  readonly sealWidth: number;
  /** Lips that turn over as the room reverses. */
  readonly lips: number;
}

export function drawRoomCourse(random: Random): RoomCourse {
  return {
    comingOut: random.uniform(-0.2, 0.45),
    backFactor: random.logUniform(0.82, 1.22),
    ramp: random.chance(0.35) ? drawRamp(random) : null,
    outerSeal: random.uniform(0.1, 0.8),
    innerSeal: random.uniform(0.1, 0.8),
    sealWidth: random.uniform(0.015, 0.045),
    lips: random.uniform(0, 0.35),
  };
}

/** The two ways of one side: rubbing, of mean 1 over both, and what stands in the way whatever is greased. */
export function drawCourse(
  random: Random,
  course: RoomCourse,
  gear: { readonly toothPart: number; readonly turnPart: number },
): Pick<Side, 'rubbing' | 'standing'> {
  const waves = drawWaves(random, random.uniform(0.02, 0.07));
  const own = { extend: drawWaves(random, 0.015), retract: drawWaves(random, 0.015) };
  const teeth = random.uniform(0.004, 0.025);
  const eccentric = random.uniform(0.004, 0.02);
  const phase = random.uniform(0, 2 * Math.PI);
  const way = (direction: 'extend' | 'retract'): { rubbing: Float64Array; standing: Float64Array } => {
    const rubbing = new Float64Array(TRAVEL_BINS);
    const standing = new Float64Array(TRAVEL_BINS);
    const level = (direction === 'extend' ? 2 : 2 * course.backFactor) / (1 + course.backFactor);
    for (let bin = 0; bin < TRAVEL_BINS; bin++) {
      const position = (bin + 0.5) / TRAVEL_BINS;
      const gone = direction === 'extend' ? position : 1 - position;
      rubbing[bin] =
        level *
        (1 +
          course.comingOut * (position - 0.5) +
          waves(position) +
          own[direction](position) +
          teeth * Math.sin((2 * Math.PI * position) / gear.toothPart) +
          eccentric * Math.sin((2 * Math.PI * position) / gear.turnPart + phase) +
          course.lips * Math.exp(-gone / 0.015));
      const outer = squeeze((position - 1) / course.sealWidth + 1);
      const inner = squeeze(1 - position / course.sealWidth);
      // A seal gives back less than it took to squeeze it.
      standing[bin] =
        direction === 'extend'
          ? course.outerSeal * outer - 0.3 * course.innerSeal * inner
          : course.innerSeal * inner - 0.3 * course.outerSeal * outer;
      if (course.ramp !== null) {
        const slope = slopeAt(course.ramp, position) * course.ramp.climb;
        standing[bin] += direction === 'extend' ? -0.6 * slope : slope;
      }
    }
    return { rubbing, standing };
  };
  const extend = way('extend');
  const retract = way('retract');
  return {
    rubbing: { extend: extend.rubbing, retract: retract.rubbing },
    standing: { extend: extend.standing, retract: retract.standing },
  };
}

function squeeze(part: number): number {
  return part <= 0 ? 0 : Math.min(1, part) ** 1.5;
}

/** Rollers come onto a ramp and off it over their own size. */
const ROLLER_PART = 0.02;

function slopeAt({ from, to }: { readonly from: number; readonly to: number }, position: number): number {
  const on = Math.max(0, Math.min(1, (position - from) / ROLLER_PART));
  const off = to > 0.985 ? 1 : Math.max(0, Math.min(1, (to - position) / ROLLER_PART));
  return Math.min(on, off);
}

/** Up to where the room rests; or a short one, with level floor after it. */
function drawRamp(random: Random) {
  const from = random.uniform(0.8, 0.9);
  const to = random.chance(0.5) ? random.uniform(0.97, 1) : from + random.uniform(0.05, 0.09);
  return { from, to, climb: random.uniform(0.2, 0.6) };
}

/** A floor's or a rack's waviness: a few sines of falling size. */
function drawWaves(random: Random, size: number): (position: number) => number {
  const sines = Array.from({ length: 5 }, (_, at) => ({
    size: (random.normal(0, 1) * size) / Math.sqrt(1 + at),
    turns: (at + 1) * random.uniform(0.7, 1.6),
    phase: random.uniform(0, 2 * Math.PI),
  }));
  return (position) =>
    sines.reduce(
      (sum, sine) => sum + sine.size * Math.sin(2 * Math.PI * sine.turns * position + sine.phase),
      0,
    );
}
