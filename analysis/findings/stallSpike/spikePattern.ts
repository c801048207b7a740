import { chiSquareUpperTail } from '../../statistics/chiSquare.ts';
import { median } from '../../statistics/median.ts';
import type { SpikePattern } from '../../warning.ts';
import type { SpikedStroke } from './spikeMemory.ts';

/** Two spikes are at one place when no further apart than this part of the travel. */
const SAME_PLACE = 0.02;
/**
 * The current follows its load a little late, and a slow logger reads it later still: the same place seems this much
 * further on in either direction, parts of the travel. It seems as much nearer where a room creeps to its end without a
 * supply record. Each of these is tried.
 */
const LATER = [0, 0.0125, -0.0125];
/** A place counts if at least this part of all spikes lies there: many spikes fall together somewhere by chance. */
const PLACE_PART = 0.6;
/**
 * Spikes of one stroke repeat if there are at least this many, spaced at least this evenly (`concentration`, 0 to 1).
 */
const LEAST_REPEATS = 3;
const LEAST_CONCENTRATION = 0.8;

/** Where the peaks of several strokes fall, and how high they are. */
export interface PatternFound {
  readonly pattern: SpikePattern;
  /** Where, for `same-place`. */
  readonly position: number | null;
  /** Strokes that show it. */
  readonly strokes: number;
  /** Median height over the running current, as a part of it. */
  readonly height: number;
}

/**
 * The pattern of a side's spikes over its latest strokes; null with fewer than three strokes that have any.
 *
 * `turn`: the part of the travel that the gear rolls off in one turn (teeth times pitch over travel). Null where the
 * gear or the travel is not known: then even spacing alone tells the pattern. Once per turn is looked for first,
 * because one of its many places could pass for a single place.
 */
export function spikePattern(strokes: readonly SpikedStroke[], turn: number | null): PatternFound | null {
  const spiked = strokes.filter((stroke) => stroke.positions.length > 0);
  if (spiked.length < 3) return null;
  const height = median(spiked.map((stroke) => Math.max(...stroke.heights)));
  const turning = spiked.filter((stroke) => repeatsEvenly(stroke.positions, turn));
  const isTurning = turning.length >= 2 && turning.length >= spiked.length / 2;
  if (isTurning && (turn === null || evenByChance(spiked, turn) < BY_CHANCE)) {
    return { pattern: 'once-per-turn', position: null, strokes: turning.length, height };
  }
  const few = atFewTurns(spiked, turn);
  if (few > 0) return { pattern: 'once-per-turn', position: null, strokes: few, height };
  const turns = overTurns(spiked, turn);
  if (turns > 0) return { pattern: 'once-per-turn', position: null, strokes: turns, height };
  const place = mostOf(LATER.map((later) => commonPlace(spiked.map((stroke) => sooner(stroke, later)))));
  const all = spiked.reduce((sum, stroke) => sum + stroke.positions.length, 0);
  if (place !== null && place.strokes >= 3 && place.strokes >= PLACE_PART * all) {
    return { pattern: 'same-place', position: place.position, strokes: place.strokes, height };
  }
  return { pattern: 'scattered', position: null, strokes: spiked.length, height };
}

/** Whether the places of one stroke's spikes are whole turns apart. */
function repeatsEvenly(positions: readonly number[], turn: number | null): boolean {
  if (positions.length < LEAST_REPEATS) return false;
  if (turn !== null) {
    if (turn >= 0.45) return false;
    // Mean resultant length of the phases (K. V. Mardia, P. E. Jupp, Directional Statistics, equation 2.3.5).
    return concentration(positions, turn) >= LEAST_CONCENTRATION;
  }
  const gaps = positions.slice(1).map((position, i) => position - positions[i]);
  const unit = Math.min(...gaps);
  if (unit < 0.04 || gaps.length < LEAST_REPEATS - 1) return false;
  return positions.length >= 4 && concentration(positions, median(gaps)) >= 0.9;
}

/**
 * Turns at least this long, parts of the travel, are looked for here: shorter ones repeat often enough within one
 * stroke.
 */
const LEAST_FEW_TURN = 0.1;
/** At least this many strokes, and this part of those with spikes, have the same few places. */
const FEW_TURNS = { strokes: 3, part: 0.5 };

/**
 * How many strokes have a few spikes that are evenly apart and at the same places each time: where the travel takes few
 * turns, no single stroke shows that they repeat. They are apart by the gear's turn; where that is not known, at least
 * three must be evenly apart. 0: too few strokes.
 */
function atFewTurns(spiked: readonly SpikedStroke[], turn: number | null): number {
  const even = spiked.filter(({ positions }) => {
    const gaps = positions.slice(1).map((position, i) => position - positions[i]);
    if (gaps.length < (turn === null ? LEAST_REPEATS - 1 : 1)) return false;
    const period = turn ?? median(gaps);
    return period >= LEAST_FEW_TURN && gaps.every((gap) => Math.abs(gap - period) <= SAME_PLACE);
  });
  if (even.length < Math.max(FEW_TURNS.strokes, FEW_TURNS.part * spiked.length)) return 0;
  const firsts = even.map((stroke) => ({ ...stroke, positions: stroke.positions.slice(0, 1) }));
  const first = mostOf(LATER.map((later) => commonPlace(firsts.map((stroke) => sooner(stroke, later)))));
  return first !== null && first.strokes === even.length ? even.length : 0;
}

/**
 * At least this many places, each seen on this many strokes, show turns if they are evenly apart. Guesses, no source.
 */
const OVER_TURNS = { places: 3, strokes: 2 };
/** How even those places are at least, and all peaks of all strokes (`concentration`, 0 to 1). */
const LEAST_EVEN = { places: 0.9, peaks: LEAST_CONCENTRATION };

/**
 * How many strokes have spikes, if those of all strokes together lie at several places whole turns apart: where teeth
 * hardly stand out, one stroke shows one of them and the next another. 0 where they do not, or where the turn is not
 * known.
 */
function overTurns(spiked: readonly SpikedStroke[], turn: number | null): number {
  if (turn === null || turn >= 0.45) return 0;
  const isOver = LATER.some((later) => {
    const strokes = spiked.map((stroke) => sooner(stroke, later));
    const places = sharedPlaces(strokes);
    if (places.length < OVER_TURNS.places || concentration(places, turn) < LEAST_EVEN.places) return false;
    const peaks = strokes.flatMap(({ positions }) => positions);
    return concentration(peaks, turn) >= LEAST_EVEN.peaks;
  });
  return isOver ? spiked.length : 0;
}

/** The places at which several strokes have a spike, from one end of the travel to the other. */
function sharedPlaces(strokes: readonly SpikedStroke[]): number[] {
  const peaks = strokes
    .flatMap(({ positions }, stroke) => positions.map((position) => ({ position, stroke })))
    .sort((a, b) => a.position - b.position);
  const groups: (typeof peaks)[] = [];
  for (const peak of peaks) {
    const group = groups.at(-1);
    if (group !== undefined && peak.position - group[0].position <= SAME_PLACE) group.push(peak);
    else groups.push([peak]);
  }
  return groups
    .filter((group) => new Set(group.map(({ stroke }) => stroke)).size >= OVER_TURNS.strokes)
    .map((group) => median(group.map(({ position }) => position)));
}

/**
 * Peaks at random places may be as even with this probability at most: a few places are soon whole turns apart. A
 * guess, no source.
 */
const BY_CHANCE = 0.003;

/**
 * The probability that peaks at random places are as even as those of all these strokes together. Each stroke's
 * probability is Rayleigh's test (K. V. Mardia, P. E. Jupp, Directional Statistics, 6.3.1; by the approximation of J.
 * H. Zar, Biostatistical Analysis, 27.1); they are combined by R. A. Fisher's method (Statistical Methods for Research
 * Workers, 21.1).
 */
function evenByChance(spiked: readonly SpikedStroke[], turn: number): number {
  const told = spiked.filter(({ positions }) => positions.length >= LEAST_REPEATS);
  const sum = told.reduce((total, { positions }) => total - Math.log(strokeEvenByChance(positions, turn)), 0);
  return chiSquareUpperTail(2 * sum, 2 * told.length);
}

function strokeEvenByChance(positions: readonly number[], turn: number): number {
  const n = positions.length;
  const length = n * concentration(positions, turn);
  return Math.exp(Math.sqrt(1 + 4 * n + 4 * (n ** 2 - length ** 2)) - (1 + 2 * n));
}

function concentration(positions: readonly number[], period: number): number {
  let cosine = 0;
  let sine = 0;
  for (const position of positions) {
    cosine += Math.cos((2 * Math.PI * position) / period);
    sine += Math.sin((2 * Math.PI * position) / period);
  }
  return Math.hypot(cosine, sine) / positions.length;
}

interface CommonPlace {
  readonly position: number;
  readonly strokes: number;
}

/** The place that most strokes share; the first of several. */
function mostOf(places: readonly (CommonPlace | null)[]): CommonPlace | null {
  return places.reduce((best, place) => ((place?.strokes ?? 0) > (best?.strokes ?? 0) ? place : best));
}

/** The stroke with its spikes moved by `later` towards where it began, parts of the travel. */
function sooner(stroke: SpikedStroke, later: number): SpikedStroke {
  const by = stroke.direction === 'extend' ? later : -later;
  return { ...stroke, positions: stroke.positions.map((position) => position - by) };
}

/** The place that most strokes have a spike at. */
function commonPlace(strokes: readonly SpikedStroke[]): CommonPlace | null {
  let best: CommonPlace | null = null;
  for (const candidate of strokes.flatMap((stroke) => stroke.positions)) {
    const near = strokes
      .map((stroke) => nearest(stroke, candidate))
      .filter((position): position is number => position !== null);
    if (best === null || near.length > best.strokes) best = { position: median(near), strokes: near.length };
  }
  return best;
}

function nearest({ positions, unsure }: SpikedStroke, place: number): number | null {
  let found: number | null = null;
  for (const position of positions) {
    const distance = Math.abs(position - place);
    if (distance <= SAME_PLACE + unsure && (found === null || distance < Math.abs(found - place)))
      found = position;
  }
  return found;
}
