import { goesByOtherSides, isBetweenSides, MEASURE_INDEX, MEASURE_NAMES } from '../measures.ts';
import { median } from '../statistics/median.ts';
import { type Channel, forgetMeasure, hasEnough, isBorrowing, shapeOf } from './channel.ts';
import { BY_SEASON, type Conditions, degreesOf, type Weather, weatherOf } from './conditions.ts';
import { copperDegrees } from './copper.ts';
import { fitMeasure, isToldByCopper } from './fitMeasure.ts';
import { withNewNormal } from './ownLimit.ts';
import { strokesBeforeStep } from './stepWhileLearning.ts';
import { REFERENCE_STROKES, RELEARNING_STROKES, SETTLING_STROKES } from './strokesNeeded.ts';
import { wholeStrokes } from './wholeStrokes.ts';

/** Adds one stroke to the reference and fits anew; `values` on the measures' scale, by index of MEASURES. */
export function learn(
  channel: Channel,
  conditions: Conditions,
  atMs: number,
  values: (number | null)[],
): void {
  channel.learntAtMs = atMs;
  channel.conditions.push(conditions);
  channel.values.push(values);
  if (hasEnough(channel) && !isBorrowing(channel)) keepBeforeStep(channel);
  // What is lent counts degrees from 20 °C, which copper cannot tell: it knows only differences.
  channel.weather = weatherOf(channel.lent === null ? channel.conditions : channel.conditions.map(unread));
  if (!hasEnough(channel)) return;
  const whole = wholeStrokes(channel.values);
  if (channel.weather.by === 'copper' && !isToldByCopper(channel, whole)) channel.weather = BY_SEASON;
  channel.fits = MEASURE_NAMES.map((name) => fitMeasure(channel, name, whole));
}

/** Takes the strokes after a step such as a fault makes out of the reference again, which is usable without them. */
function keepBeforeStep(channel: Channel): void {
  const before = strokesBeforeStep(channel);
  if (before === channel.values.length) return;
  channel.conditions = channel.conditions.slice(0, before);
  channel.values = channel.values.slice(0, before);
  channel.needed = Math.min(channel.needed, before);
}

function unread([volts, degrees, season]: Conditions): Conditions {
  return [volts, degrees, season, null];
}

/**
 * How far outside those of all reference strokes a condition must lie to teach the slopes something: volts and degrees.
 */
const NEWS = { volts: 0.3, degrees: 3 };

/** Whether a stroke's supply or temperature lies outside what the reference has seen, by enough to teach a slope. */
export function isNews(channel: Channel, conditions: Conditions): boolean {
  const isOutside = (of: (conditions: Conditions) => number | null, least: number) => {
    const here = of(conditions);
    const known = channel.conditions.map(of).filter((value) => value !== null);
    if (here === null || known.length === 0) return false;
    return here < Math.min(...known) - least || here > Math.max(...known) + least;
  };
  return (
    isOutside(([volts]) => volts, NEWS.volts) ||
    isOutside((each) => newsDegrees(each, channel.weather), NEWS.degrees)
  );
}

/**
 * The temperature of a stroke. Copper warmer than the reference's counts here in full, unlike in the regressor, which
 * limits it.
 */
function newsDegrees(conditions: Conditions, weather: Weather): number | null {
  if (weather.by !== 'copper') return degreesOf(conditions, weather);
  return copperDegrees({ ...weather.scale, warmest: Number.POSITIVE_INFINITY }, conditions[3]);
}

/**
 * The ground of one stay may ease a room by this much, on the measure's scale: a smaller ease is left to `follow`. A
 * guess, no source.
 */
const LEAST_EASED = 0.05;

/**
 * Takes in a stroke after a light service (cleaning, lubricating). The old reference stands, so that work that made
 * things worse shows; but if the next strokes run easier, its level comes down to them at once. `differences`: value
 * less the reference's expectation, by measure, including what was followed since, which the new level replaces.
 */
export function settle(channel: Channel, differences: (number | null)[]): void {
  if (channel.settling === null) return;
  channel.settling.push(differences);
  if (channel.settling.length < SETTLING_STROKES) return;
  const strokes = channel.settling;
  channel.settling = null;
  const moved = (index: number) => {
    const own = strokes.map((stroke) => stroke[index]).filter((value) => value !== null);
    return own.length > 0 ? median(own) : 0;
  };
  const easedOne = hasEasedOne(moved(MEASURE_INDEX.runningAmps), moved(MEASURE_INDEX.share));
  const moves = channel.fits.map((old, index) => {
    if (old === null) return 0;
    const move = moved(index);
    if (isBetweenSides(MEASURE_NAMES[index])) return easedOne ? move : 0;
    return move > -Math.max(old.scale, LEAST_EASED) ? 0 : move;
  });
  bringDown(channel, moves);
}

/** A side whose current rose by less than this took no load over, on the measure's scale. A guess, no source. */
const NO_HARDER = 0.03;

/**
 * Whether a light service eased one side more than the other: this one, if its share fell with its current, or the
 * other, if this one's share grew though it works no harder. Only then do they share the load, and arrive, otherwise
 * than before.
 */
function hasEasedOne(running: number, share: number): boolean {
  return share < 0 ? running < -LEAST_EASED : running < NO_HARDER;
}

/**
 * Moves the level of the reference together with its strokes, because what it learns later is fitted together with
 * them.
 */
function bringDown(channel: Channel, moves: readonly number[]): void {
  channel.values = channel.values.map((stroke) =>
    stroke.map((value, index) => (value === null ? null : value + moves[index])),
  );
  channel.fits = channel.fits.map((fit, index) => {
    if (fit === null || moves[index] === 0) return fit;
    channel.level[index] = 0;
    channel.recent[index] = 0;
    const [level, ...slopes] = fit.coefficients;
    return { ...fit, coefficients: [level + moves[index], ...slopes] };
  });
}

/** Takes one more stroke into the usual profile: a plain mean at first, later one that forgets. */
export function learnProfile(channel: Channel, profile: readonly (number | null)[]): void {
  const part = 1 / Math.max(1, Math.min(REFERENCE_STROKES, channel.values.length));
  channel.profile = profile.map((amps, bin) => {
    const usual = channel.profile[bin] ?? null;
    if (amps === null) return usual;
    return usual === null ? amps : usual + part * (amps - usual);
  });
}

/**
 * Starts the reference anew after a service, from the shape of the old one: its slopes and spread, not its level. A
 * normal that was still borrowed has no shape of its own to keep.
 */
export function relearn(channel: Channel): void {
  if (!isBorrowing(channel)) {
    channel.shapes = channel.fits.map((old, index) => (old === null ? channel.shapes[index] : shapeOf(old)));
    if (channel.fits.some((old) => old !== null)) channel.needed = RELEARNING_STROKES;
  }
  channel.conditions = [];
  channel.values = [];
  channel.fits = MEASURE_NAMES.map(() => null);
  channel.settling = null;
  channel.level.fill(0);
  channel.recent.fill(0);
  channel.ownLimits = channel.ownLimits.map(withNewNormal);
}

/**
 * After work on another side alone: the sides may share the load, and arrive, otherwise than before, so that this is
 * learnt anew.
 */
export function compareAnew(channel: Channel): void {
  MEASURE_NAMES.forEach((measure, index) => {
    if (!goesByOtherSides(measure)) return;
    const fit = channel.fits[index];
    if (fit !== null && !isBorrowing(channel)) channel.shapes[index] = shapeOf(fit);
    forgetMeasure(channel, index);
  });
  channel.comparesAnew = true;
}
