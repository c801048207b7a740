import { type Channel, isBorrowing, isReady } from '../baseline/channel.ts';
import { coarseSpread, isTooCoarse } from '../baseline/coarseSteps.ts';
import { type Conditions, conditionsAt } from '../baseline/conditions.ts';
import { type CopperRead, copperReading, MOST_DAYS } from '../baseline/copper.ts';
import { adjustedAsARule, follow, judgeMeasure, type Residual } from '../baseline/judge.ts';
import { unexplainedLag } from '../baseline/lagByLoad.ts';
import { isNews, learn, learnProfile, settle } from '../baseline/learn.ts';
import { isSameRecording, lacking, takeRate } from '../baseline/samplingRate.ts';
import { toScale } from '../baseline/scale.ts';
import { stallsAsEver } from '../baseline/stallsAsEver.ts';
import { MOST_REFERENCE_STROKES, REFERENCE_STROKES } from '../baseline/strokesNeeded.ts';
import { unseenZero } from '../baseline/unseenZero.ts';
import { isStretched } from '../findings/heavyStretch.ts';
import { areBrief, isLetGo } from '../findings/stallHeld.ts';
import { DAY_MS, type Expectation, type StrokeEvent } from '../history.ts';
import { type DoneAnalysis, MEASURE_NAMES, type MeasureName, measureValue } from '../measures.ts';
import { channelOf, type RoomState } from './state.ts';

/** Every measure of every side of one stroke against its baseline. */
export interface JudgedStroke {
  readonly expectations: Expectation[];
  residual(side: string, measure: MeasureName): Residual | null;
}

/** What a stroke was made under, by its record. */
export function conditionsOf(
  { room }: RoomState,
  event: StrokeEvent,
  { supplyVolts }: DoneAnalysis,
): Conditions {
  return conditionsAt(supplyVolts, room.nominalVolts, event.ambientC, event.atMs);
}

/** The same with what one side's copper reads, or last read; after `noteStay`. */
export function sideConditions(
  state: RoomState,
  event: StrokeEvent,
  analysis: DoneAnalysis,
  side: string,
): Conditions {
  return conditionsAt(
    analysis.supplyVolts,
    state.room.nominalVolts,
    event.ambientC,
    event.atMs,
    copperAt(state, event, analysis, side),
  );
}

function copperAt(
  state: RoomState,
  event: StrokeEvent,
  analysis: DoneAnalysis,
  side: string,
): CopperRead | null {
  const channel = channelOf(state, side, analysis.direction);
  const reading = stallsAsEver(channel, analysis) ? copperReading(analysis, side, state.stay.restedMs) : null;
  const read = reading === null ? null : sharedCopper(state, analysis, side, reading);
  if (read !== null) return read;
  const last = channel?.copper ?? null;
  if (last === null) return null;
  const days = Math.max(0, event.atMs - last.atMs) / DAY_MS;
  return days > MOST_DAYS ? null : { degrees: last.degrees, days, isShared: last.isShared };
}

/** Two readings of one stroke that are further apart, degrees, are not both of the weather: a guess, no source. */
const MOST_APART_C = 10;

/**
 * Weather is the same for all sides: no side's copper counts as colder than the least cold of them, and none is read where
 * they contradict each other.
 */
function sharedCopper(
  state: RoomState,
  analysis: DoneAnalysis,
  side: string,
  reading: number,
): CopperRead | null {
  const usualOf = (name: string) => {
    const weather = channelOf(state, name, analysis.direction)?.weather;
    return weather?.by === 'copper' ? weather.scale.usual : null;
  };
  const usual = usualOf(side);
  const others = state.room.sides.flatMap((name) => {
    const there = name === side ? null : copperReading(analysis, name, state.stay.restedMs);
    const usualThere = usualOf(name);
    return there === null || usualThere === null ? [] : [there - usualThere];
  });
  if (usual === null || others.length === 0) return { degrees: reading, days: 0, isShared: false };
  if (others.some((other) => Math.abs(other - (reading - usual)) > MOST_APART_C)) return null;
  return { degrees: Math.max(reading, usual + Math.max(...others)), days: 0, isShared: true };
}

/** Remembers what the copper of a stroke read; after everything else was told of it. */
export function noteCopper(state: RoomState, event: StrokeEvent, analysis: DoneAnalysis): void {
  for (const side of Object.keys(analysis.sides)) {
    const read = copperAt(state, event, analysis, side);
    const channel = channelOf(state, side, analysis.direction);
    if (channel === undefined || read === null || read.days > 0) continue;
    channel.copper = { degrees: read.degrees, isShared: read.isShared, atMs: event.atMs };
  }
}

export function judgeStroke(state: RoomState, event: StrokeEvent, analysis: DoneAnalysis): JudgedStroke {
  const residuals = new Map<string, Residual>();
  const expectations: Expectation[] = [];
  for (const side of Object.keys(analysis.sides)) {
    const channel = channelOf(state, side, analysis.direction);
    if (channel === undefined) continue;
    const conditions = sideConditions(state, event, analysis, side);
    MEASURE_NAMES.forEach((measure, index) => {
      const value = measureValue(analysis, measure, side);
      if (value === null) return;
      const zero = Math.hypot(
        unseenZero(analysis, side, measure, event.atMs - channel.learntAtMs),
        coarseSpread(analysis.sides[side], measure, value),
      );
      const endStop = residuals.get(`${side}|endStopAmps`) ?? null;
      const judged = isComparable(state, channel, analysis, measure, value, endStop)
        ? judgeMeasure(channel, index, conditions, event.atMs, toScale(measure, value), zero)
        : null;
      if (judged !== null) residuals.set(`${side}|${measure}`, judged);
      const { expected = null, beyond = null } = judged ?? {};
      const adjusted = judged?.adjusted ?? adjustedAsARule(measure, conditions, value);
      expectations.push({ side, measure, value, expected, adjusted, beyond });
    });
  }
  const residual: JudgedStroke['residual'] = (side, measure) => residuals.get(`${side}|${measure}`) ?? null;
  return { expectations: excuseLag(state, analysis, expectations, residual), residual };
}

/** A lag that the sides' load explains is not beyond its limits: the ground stands crooked, and that is said by the load. */
function excuseLag(
  state: RoomState,
  analysis: DoneAnalysis,
  expectations: Expectation[],
  residual: JudgedStroke['residual'],
): Expectation[] {
  const { sides } = state.room;
  if (sides.length !== 2 || sides.some((side) => analysis.sides[side] === undefined)) return expectations;
  const [first, last] = sides.map((side) => residual(side, 'runningAmps')?.residual ?? 0);
  const durationS = Math.max(...sides.map((side) => analysis.sides[side].durationS));
  return expectations.map((expectation) => {
    if (expectation.measure !== 'lagS' || expectation.beyond !== true) return expectation;
    const lag = residual(expectation.side, 'lagS');
    if (lag === null) return expectation;
    const left = unexplainedLag(lag.residual, last - first, durationS);
    return { ...expectation, beyond: Math.abs(left) > lag.limit };
  });
}

const BY_STALL: ReadonlySet<MeasureName> = new Set(['chargeAs', 'energyJ', 'turnsAs']);

/**
 * Whether a measure of this stroke can be held against its baseline: a charge with the stall in it is none without,
 * nor are turns that were counted by it, nor by one that was let go too soon; what is read off single samples depends
 * on their rate; a spread within a step or two of the sensor is not measured.
 */
function isComparable(
  state: RoomState,
  channel: Channel,
  analysis: DoneAnalysis,
  measure: MeasureName,
  value: number,
  endStop: Residual | null,
): boolean {
  if (isTooCoarse(analysis.sides[channel.side], measure, value)) return false;
  const { endStopAmps, rateHz = null } = analysis.sides[channel.side];
  const { stopRate } = state.travel[analysis.direction];
  if (BY_STALL.has(measure) && stopRate !== null && stopRate >= 0.5 !== (endStopAmps !== null)) return false;
  if (measure === 'turnsAs' && isLetGo(state.travel[analysis.direction], analysis, channel.side, endStop))
    return false;
  return isSameRecording(channel, measure, rateHz, hasBriefStalls(state, channel, rateHz));
}

/** Whether a stroke's rate is another than the reference's, and the slower of both is too slow for this side's stalls. */
function hasBriefStalls({ travel }: RoomState, channel: Channel, rateHz: number | null): boolean {
  const { rateHz: known, side, direction } = channel;
  if (rateHz === null || known === null || rateHz === known) return false;
  return areBrief(travel[direction], side, Math.min(rateHz, known));
}

/**
 * Lets the baselines learn from a stroke that no finding speaks against: into the reference while it is short, else
 * only the slowly following level.
 */
export function learnStroke(
  state: RoomState,
  event: StrokeEvent,
  analysis: DoneAnalysis,
  judged: JudgedStroke,
  doubtful: ReadonlySet<string>,
): void {
  for (const [side, { profile, rateHz = null }] of Object.entries(analysis.sides)) {
    const channel = channelOf(state, side, analysis.direction);
    if (channel === undefined || doubtful.has(side)) continue;
    const conditions = sideConditions(state, event, analysis, side);
    const running = judged.residual(side, 'runningAmps');
    const endStop = judged.residual(side, 'endStopAmps');
    settle(
      channel,
      MEASURE_NAMES.map((measure) => judged.residual(side, measure)?.rise ?? null),
    );
    takeRate(channel, rateHz, hasBriefStalls(state, channel, rateHz));
    const values = MEASURE_NAMES.map((measure) => {
      const value = measureValue(analysis, measure, side);
      if (value === null || !isComparable(state, channel, analysis, measure, value, endStop)) return null;
      return toScale(measure, value);
    });
    if (isWanted(channel, conditions, running)) {
      learn(channel, conditions, event.atMs, values);
      learnProfile(channel, profile);
      continue;
    }
    MEASURE_NAMES.forEach((measure, index) => {
      const residual = judged.residual(side, measure);
      if (residual !== null) follow(channel, index, residual);
    });
    if (running?.beyond !== false) continue;
    if (!swings(state, side) && !isStretched({ state, direction: analysis.direction }, side))
      learnProfile(channel, profile);
    const taught = lacking(channel, values);
    if (taught !== null) learn(channel, conditions, channel.learntAtMs, taught);
  }
}

/** A swing that is told against the usual profile must not become usual. */
function swings(state: RoomState, side: string): boolean {
  return state.open.some((open) => open.side === side && open.pattern === 'once-per-turn');
}

/** Every measure of one side on its baseline's scale, by index of MEASURES; null where the stroke has none. */
export function scaledValues(analysis: DoneAnalysis, side: string): (number | null)[] {
  return MEASURE_NAMES.map((measure) => {
    const value = measureValue(analysis, measure, side);
    return value === null ? null : toScale(measure, value);
  });
}

/** Above this a stroke is no teacher of slopes: a slow fault must not be learnt as weather. */
const NEWS_RISE = 0.05;

function isWanted(channel: Channel, conditions: Conditions, running: Residual | null): boolean {
  // A borrowed normal judges, but the first strokes teach whatever it says of them: or an odd first one would stay.
  if (!isReady(channel) || isBorrowing(channel)) return true;
  if (running === null || running.beyond) return false;
  if (channel.values.length < REFERENCE_STROKES) return true;
  if (channel.values.length >= MOST_REFERENCE_STROKES) return false;
  return isNews(channel, conditions) && Math.abs(running.rise) < Math.max(NEWS_RISE, running.deviation);
}
