import type { Random } from './random.ts';

/** The load along the travel as a factor about 1, by position (0 retracted to 1 extended), in equal steps. */
export type Course = Float64Array;

const STEPS = 400;

/** The factor at one position. */
export function courseAt(course: Course, position: number): number {
  const place = Math.min(Math.max(position, 0), 1) * STEPS;
  const at = Math.min(Math.floor(place), STEPS - 1);
  return course[at] + (place - at) * (course[at + 1] - course[at]);
}

/** What the track is like: joints and humps that both directions meet. */
export interface Track {
  readonly humps: readonly { readonly position: number; readonly width: number; readonly height: number }[];
}

export function drawTrack(random: Random): Track {
  const humps = Array.from({ length: random.whole(0, 5) }, () => ({
    position: random.between(0.1, 0.9),
    width: random.scaled(0.015, 0.08),
    height: random.between(-0.05, 0.14),
  }));
  return { humps };
}

/** Draws one side's course in one direction: slopes and bows, the track's humps, and seals at both ends. */
export function drawCourse(track: Track, random: Random): Course {
  const bows = [1, 2, 3].map((order) => ({
    order,
    height: (random.normal() * 0.06) / order,
    phase: random.between(0, Math.PI),
  }));
  const sealIn = { height: random.between(0, 0.35), width: random.between(0.01, 0.05) };
  const sealOut = { height: random.between(0, 0.35), width: random.between(0.01, 0.05) };
  return Float64Array.from({ length: STEPS + 1 }, (_, at) => {
    const position = at / STEPS;
    let factor = 1;
    for (const { order, height, phase } of bows)
      factor += height * Math.cos(Math.PI * order * position + phase);
    for (const { position: centre, width, height } of track.humps)
      factor += height * Math.exp(-0.5 * ((position - centre) / width) ** 2);
    factor += sealIn.height * Math.exp(-position / sealIn.width);
    factor += sealOut.height * Math.exp((position - 1) / sealOut.width);
    return factor;
  });
}

/** What one stroke alone adds along the travel: a random walk that returns to 0, of a given standard deviation. */
export function drawWander(deviation: number, random: Random): Course {
  const memory = Math.exp(-1 / (STEPS * random.between(0.06, 0.25)));
  const step = deviation * Math.sqrt(1 - memory * memory);
  const course = new Float64Array(STEPS + 1);
  course[0] = deviation * random.normal();
  for (let at = 1; at <= STEPS; at++) course[at] = memory * course[at - 1] + step * random.normal();
  return course;
}
