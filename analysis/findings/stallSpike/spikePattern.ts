import { chiSquareUpperTail } from '../../statistics/chiSquare.ts';
import { median } from '../../statistics/median.ts';
import type { SpikePattern } from '../../warning.ts';
import type { SpikedStroke } from './spikeMemory.ts';

/** Two spikes are at one place when no further apart than this part of the travel. */
const SAME_PLACE = 0.02;
/**
 * A current answers its load a little later, and a slow logger reads it later still: the same place seems so much further on
 * in either direction, parts of the travel. Where a room creeps to its end and nobody recorded its supply it seems as much nearer.
 */
const LATER = [0, 0.0125, -0.0125];
/** A place of its own holds at least this part of all the spikes: many spikes fall together somewhere by chance. */
const PLACE_PART = 0.6;
/** Spikes of one stroke that repeat: at least so many, and their spacing this even. */
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
 * `turn`: the part of the travel that the gear rolls off in one turn (teeth times pitch over travel); null where the
 * gear or the travel is not known, when even spacing alone tells it. Once per turn is told first, since one of its
 * many places would look like a place of its own.
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

/** Places this far apart at least are turns: nearer ones repeat more often, and tell it by themselves. */
const LEAST_FEW_TURN = 0.1;
/** So many strokes, and this part of those with spikes, have the very same few places. */
const FEW_TURNS = { strokes: 3, part: 0.5 };

/**
 * Strokes whose few spikes are evenly apart, by the gear's own turn or, where that is not known, by three of them at least, and at
 * the same places each time: where a travel takes but few turns, no one stroke tells it. 0: too few do.
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

/** So many places of their own, evenly apart, are turns: each of them seen on so many strokes. Guesses, no source. */
const OVER_TURNS = { places: 3, strokes: 2 };
/** So even are those places, and all peaks of all strokes. */
const LEAST_EVEN = { places: 0.9, peaks: LEAST_CONCENTRATION };

/**
 * Strokes with spikes, where those of all strokes together come at several places that are whole turns apart: of teeth that
 * hardly stand out one stroke shows this one and another that one. 0: they do not, or the turn is not known.
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

/** Peaks that come anywhere seem as even as that so seldom: a few places are soon a whole turn apart. A guess, no source. */
const BY_CHANCE = 0.003;

/**
 * How probably peaks that come anywhere are as even as those of all these strokes together: each stroke's probability by
 * Rayleigh's test (K. V. Mardia, P. E. Jupp, Directional Statistics, 6.3.1; by the approximation of J. H. Zar, Biostatistical
 * Analysis, 27.1), combined as R. A. Fisher did (Statistical Methods for Research Workers, 21.1).
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

/** The first of those that most strokes share. */
function mostOf(places: readonly (CommonPlace | null)[]): CommonPlace | null {
  return places.reduce((best, place) => ((place?.strokes ?? 0) > (best?.strokes ?? 0) ? place : best));
}

/** A stroke whose spikes lie so much nearer to where it began. */
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
