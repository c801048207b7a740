import { type Channel, hasOwnNormal, isBorrowing } from '../baseline/channel.ts';
import type { Conditions } from '../baseline/conditions.ts';
import { follow } from '../baseline/follow.ts';
import type { Residual } from '../baseline/judge.ts';
import { lacking } from '../baseline/lacking.ts';
import { isNews, learn, learnProfile, settle } from '../baseline/learn.ts';
import { noteResidual } from '../baseline/ownLimit.ts';
import { takeRate } from '../baseline/samplingRate.ts';
import { toScale } from '../baseline/scale.ts';
import { isFaultsWay } from '../baseline/stepWhileLearning.ts';
import { MOST_REFERENCE_STROKES, REFERENCE_STROKES } from '../baseline/strokesNeeded.ts';
import { wholeStrokes } from '../baseline/wholeStrokes.ts';
import type { FindingContext } from '../findings/finding.ts';
import { isPart } from '../findings/isPart.ts';
import { isStretched } from '../findings/load/heavyStretch.ts';
import { sideConditions } from '../findings/strokeConditions.ts';
import { MEASURE_NAMES, measureValue, type SideMeasures } from '../measures.ts';
import { channelOf, type RoomState } from '../roomState.ts';
import { median } from '../statistics/median.ts';
import { hasBriefStalls, isComparable, type SideOfStroke } from './isComparable.ts';
import type { JudgedStroke } from './judgeStroke.ts';
import { hasMissedStart } from './missedStart.ts';

type LearnedStroke = Pick<FindingContext, 'state' | 'event' | 'analysis' | 'doubtful' | 'residual'>;

/**
 * Lets the baselines learn from a stroke that no finding speaks against: into the reference while it is short, else
 * only the slowly following level. `judged`: the stroke against the baselines as they were before it.
 */
export function learnStroke(stroke: LearnedStroke, judged: JudgedStroke): void {
  const { state, analysis, doubtful } = stroke;
  for (const side of Object.keys(analysis.sides)) {
    const channel = channelOf(state, side, analysis.direction);
    if (channel !== undefined && !doubtful.has(side)) learnSide(stroke, channel, judged);
  }
}

function learnSide(stroke: LearnedStroke, channel: Channel, judged: JudgedStroke): void {
  const { state, event, analysis } = stroke;
  const { side, direction } = channel;
  const { rateHz = null } = analysis.sides[side];
  const profile = courseToLearn(state, channel, analysis.sides[side]);
  const conditions = sideConditions(state, event, analysis, side);
  const running = judged.residual(side, 'runningAmps');
  takeRate(channel, rateHz, hasBriefStalls(state, channel, rateHz));
  // After the rate was taken: what cannot be compared with a reference of another rate begins a new one.
  const values = comparableValues({ state, analysis, channel }, judged);
  // What was broken off or taken up again knows neither how long a whole stroke takes nor its course, however wide they spread.
  if (hasOwnNormal(channel) && isPart(stroke)) return;
  settle(
    channel,
    MEASURE_NAMES.map((measure) => judged.residual(side, measure)?.fromReference ?? null),
  );
  noteLimits(channel, analysis.sides[side], judged);
  if (departs(channel, judged)) return;
  if (isWanted(channel, conditions, running)) {
    const whole = wholeStrokes([...channel.values, values]).at(-1) === true;
    learn(channel, conditions, event.atMs, values);
    if (channel.profile.length === 0 || (whole && !swings(state, side))) learnProfile(channel, profile);
    return;
  }
  for (const measure of MEASURE_NAMES) {
    const residual = judged.residual(side, measure);
    if (residual !== null) follow(channel, residual);
  }
  const isOdd = running?.beyond !== false;
  if (!isOdd && !swings(state, side) && !isStretched({ state, direction }, side))
    learnProfile(channel, profile);
  const taught = lacking(channel, values, isOdd);
  if (taught !== null) learn(channel, conditions, channel.learntAtMs, taught);
}

/** What the stroke tells of the single-stroke limits, of each measure that it was held against. */
function noteLimits(channel: Channel, measured: SideMeasures, judged: JudgedStroke): void {
  MEASURE_NAMES.forEach((measure, index) => {
    const residual = judged.residual(channel.side, measure);
    if (residual === null || channel.fits[index] === null) return;
    if (measure === 'inrushAmps' && hasMissedStart(measured, residual)) return;
    channel.ownLimits[index] = noteResidual(channel.ownLimits[index], residual);
  });
}

/** What a stroke may teach, on the measures' scale, by index of MEASURES; null where it cannot be compared. */
function comparableValues(stroke: SideOfStroke, judged: JudgedStroke): (number | null)[] {
  const { analysis, channel } = stroke;
  const endStop = judged.residual(channel.side, 'endStopAmps');
  return MEASURE_NAMES.map((measure) => {
    const value = measureValue(analysis, measure, channel.side);
    if (value === null || !isComparable(stroke, measure, value, endStop)) return null;
    return toScale(measure, value);
  });
}

/** A peak reaches so much further to either side than half its width, and one that was said so far, parts of the travel. */
const ABOUT_PEAK = 0.03;
const ABOUT_PLACE = 0.05;

/**
 * A stroke's profile with its peaks taken out, and what stands at the place that was said: what catches there must not become
 * usual, and be over for that. There the usual course goes along with the rest of the travel. While the room learns its course
 * for the first time, which may have such places, only what was said is left out (of peaks at no one place, all): it is bridged
 * from either side.
 */
function courseToLearn({ open }: RoomState, channel: Channel, measured: SideMeasures): (number | null)[] {
  const { spikes, durationS, profile } = measured;
  const isFirst = !hasOwnNormal(channel) && channel.shapes.every((shape) => shape === null);
  const peaks = spikes.map(({ position, widthS }) => ({
    position,
    reach: ABOUT_PEAK + widthS / durationS / 2,
  }));
  const said = open.flatMap(({ kind, side, position }) =>
    kind === 'stall-spike' && side === channel.side && position !== null
      ? [{ position, reach: ABOUT_PLACE }]
      : [],
  );
  const turns = open.some(
    ({ kind, side, position }) => kind === 'stall-spike' && side === channel.side && position === null,
  );
  const caught = isFirst && !turns ? said : [...peaks, ...said];
  if (caught.length === 0) return [...profile];
  const isCaught = profile.map((_, bin) =>
    caught.some(({ position, reach }) => Math.abs((bin + 0.5) / profile.length - position) < reach),
  );
  if (isFirst) return bridged(profile, isCaught);
  const ratios = profile.flatMap((amps, bin) => {
    const usual = channel.profile[bin] ?? 0;
    return isCaught[bin] || amps === null || !(usual > 0) ? [] : [amps / usual];
  });
  const times = ratios.length === 0 ? 1 : median(ratios);
  return profile.map((amps, bin) => {
    const usual = channel.profile[bin] ?? null;
    return isCaught[bin] ? usual && times * usual : amps;
  });
}

/** A profile whose caught bins lie on the straight line between the ones beside them; as high as the one where there is no other. */
function bridged(profile: readonly (number | null)[], isCaught: readonly boolean[]): (number | null)[] {
  const near = (bin: number, step: 1 | -1) => {
    let at = bin;
    while (isCaught[at] === true) at += step;
    return { at, amps: profile[at] ?? null };
  };
  return profile.map((amps, bin) => {
    if (!isCaught[bin]) return amps;
    const [before, after] = [near(bin, -1), near(bin, 1)];
    if (before.amps === null || after.amps === null) return before.amps ?? after.amps;
    return before.amps + ((after.amps - before.amps) * (bin - before.at)) / (after.at - before.at);
  });
}

/** A swing that is told against the usual profile must not become usual. */
function swings(state: RoomState, side: string): boolean {
  return state.open.some((open) => open.side === side && open.pattern === 'once-per-turn');
}

/**
 * Whether a stroke departs as a fault makes it, by more than rooms of the model differ, from what is lent and from the room's
 * own strokes alike: a room that lay elsewhere than its model would have done so from the first on.
 */
function departs(channel: Channel, judged: JudgedStroke): boolean {
  if (!isBorrowing(channel) || channel.values.length === 0) return false;
  return MEASURE_NAMES.some((measure) => {
    const residual = judged.residual(channel.side, measure);
    return residual?.beyond === true && isFaultsWay(measure, residual.residual);
  });
}

/** Above this a stroke is no teacher of slopes: a slow fault must not be learnt as weather. */
const NEWS_RISE = 0.05;

function isWanted(channel: Channel, conditions: Conditions, running: Residual | null): boolean {
  // A borrowed normal judges, but the first strokes teach whatever it says of them: or an odd first one would stay.
  if (!hasOwnNormal(channel)) return true;
  if (running === null || running.beyond) return false;
  if (channel.values.length < REFERENCE_STROKES) return true;
  if (channel.values.length >= MOST_REFERENCE_STROKES) return false;
  return isNews(channel, conditions) && Math.abs(running.rise) < Math.max(NEWS_RISE, running.deviation);
}
