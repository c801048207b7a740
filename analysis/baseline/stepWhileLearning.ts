import { mean, sumNthPowerDeviations } from 'simple-statistics';
import { MEASURE_INDEX, type MeasureName } from '../measures.ts';
import type { Channel } from './channel.ts';
import { degreesOf } from './conditions.ts';
import { weatherFor } from './fitMeasure.ts';
import { type MeasurePrior, PRIORS, UNSEASONABLE_C, unseenSupply } from './priors.ts';

/**
 * Steps such as a fault makes, on the measure's scale. A room that runs easier than at first has bedded in, and one
 * that runs slower is cold: those are none. Guesses, no source.
 */
const STEPS: readonly { readonly measure: MeasureName; readonly isFault: (step: number) => boolean }[] = [
  { measure: 'runningAmps', isFault: (step) => step > 0.1 },
  { measure: 'durationS', isFault: (step) => step < -0.12 },
  { measure: 'inrushAmps', isFault: (step) => Math.abs(step) > 0.2 },
  { measure: 'share', isFault: (step) => Math.abs(step) > 0.035 },
  { measure: 'lagS', isFault: (step) => Math.abs(step) > 0.4 },
];

/** Whether a departure from what is expected is such as a fault makes; on the measure's scale. */
export function isFaultsWay(measure: MeasureName, departure: number): boolean {
  return STEPS.some((step) => step.measure === measure && step.isFault(departure));
}

/** At least this many strokes before a step tell what the room was like, and this many after it tell that it lasts. */
const LEAST_BEFORE = 4;
const LEAST_AFTER = 2;

/**
 * How many standard errors a step must stand out by, at the best of all places among few strokes. By the t distribution
 * with some ten degrees of freedom that comes by chance once in a thousand at one place.
 */
const STANDS_OUT = 4.5;

/**
 * How many of the reference strokes so far were made before a step such as a fault makes, that lasted: those are the
 * room's normal, and what came after is compared with it. All of them where there is no such step. At each place the
 * two-sample t statistic is taken, with the spread shrunk towards what is expected of any room. The place is searched
 * for as by A. N. Pettitt (1979), whose rank test needs more than eight strokes.
 */
export function strokesBeforeStep(channel: Channel): number {
  let best = { score: STANDS_OUT, before: channel.values.length };
  for (const { measure, isFault } of STEPS) {
    const levels = levelsOf(channel, measure);
    for (let before = LEAST_BEFORE; before <= levels.length - LEAST_AFTER; before++) {
      const { step, error } = stepAt(levels, before, spreadOf(channel, measure));
      const score = Math.abs(step) / error;
      if (isFault(step) && score > best.score) best = { score, before: levels[before].stroke };
    }
  }
  return best.before;
}

interface Level {
  /** Index among the reference strokes. */
  readonly stroke: number;
  /** The measure, brought to the usual conditions by the slopes that hold for any room. */
  readonly value: number;
}

function levelsOf(channel: Channel, measure: MeasureName): Level[] {
  const index = MEASURE_INDEX[measure];
  const { perVolt, perDegree } = PRIORS[measure];
  const weather = weatherFor(channel, measure);
  const isByRule = weather.by === 'ambient';
  return channel.values.flatMap((values, stroke) => {
    const value = values[index];
    if (value === null) return [];
    const conditions = channel.conditions[stroke];
    const degrees = isByRule ? (degreesOf(conditions, weather) ?? 0) : 0;
    return [{ stroke, value: value - perVolt.mean * (conditions[0] ?? 0) - perDegree.mean * degrees }];
  });
}

/** What spread is expected of a stroke in any room whose supply and temperature are as well known as here. */
function spreadOf(channel: Channel, measure: MeasureName): MeasurePrior {
  const prior = PRIORS[measure];
  const powered = channel.conditions.some(([volts]) => volts !== null) ? prior : unseenSupply(prior);
  if (weatherFor(channel, measure).by === 'ambient') return powered;
  return { ...powered, scale: Math.hypot(powered.scale, UNSEASONABLE_C * prior.perDegree.mean) };
}

function stepAt(levels: readonly Level[], before: number, prior: MeasurePrior) {
  const first = levels.slice(0, before).map(({ value }) => value);
  const rest = levels.slice(before).map(({ value }) => value);
  const [low, high] = [mean(first), mean(rest)];
  const squares = sumNthPowerDeviations(first, 2) + sumNthPowerDeviations(rest, 2);
  const variance = (squares + prior.scaleWeight * prior.scale ** 2) / (levels.length - 2 + prior.scaleWeight);
  const spread = Math.max(prior.scaleFloor, Math.sqrt(variance));
  return { step: high - low, error: spread * Math.sqrt(1 / first.length + 1 / rest.length) };
}
