import { asOfTwelveVolts, REFERENCE_C, REFERENCE_VOLTS } from '../../baseline/conditions.ts';
import { PRIORS } from '../../baseline/priors.ts';
import type { StrokeEvent } from '../../history.ts';
import type { SideMeasures } from '../../measures.ts';
import { LEAST_STANDSTILL } from '../../motor/turns.ts';
import type { FindingContext } from '../finding.ts';
import { aboveModel } from './heavyForModel.ts';

/** It is said within the first strokes or never: later a rise is `rising-draw`. */
export const FIRST_STROKES = 8;

/**
 * The current at standstill is V/R at the start and at the stop alike: an end that draws less than this part of the start is
 * a seal that was pressed, or a drive that was switched off as it rose. A hot winding and a tired battery leave so much.
 */
const STALL_OF_START = 0.85;

/** Takes what a stroke's sides drew into their memories; of a side in doubt nothing. */
export function noteHeavy(context: FindingContext): void {
  const { state, analysis, event, doubtful } = context;
  for (const [side, measured] of Object.entries(analysis.sides)) {
    const memory = state.heavy[side];
    if (memory === undefined || doubtful.has(side)) continue;
    memory.amps[context.direction].push(withoutCold(measured.runningAmps, event));
    const stall = stallOf(measured);
    const ofReference = partOfReference(context);
    if (stall !== null) memory.stall.push(stall / ofReference);
    const { inrushAmps, endStopAmps } = measured;
    if (endStopAmps !== null)
      memory.stops.push({
        direction: context.direction,
        amps: endStopAmps,
        atReference: endStopAmps / ofReference,
        below: Math.log(inrushAmps / endStopAmps),
      });
    memory.mostAmps = Math.max(memory.mostAmps, inrushAmps / ofReference);
    const above = aboveModel(context, side);
    if (above !== null) memory.above.push(above);
    for (const list of [...Object.values(memory.amps), memory.stall, memory.stops, memory.above])
      if (list.length > FIRST_STROKES) list.shift();
  }
}

/** What a side draws, amperes, less what cold adds. */
export function withoutCold(amps: number, { ambientC }: StrokeEvent): number {
  const colder = Math.min(0, (ambientC ?? REFERENCE_C) - REFERENCE_C);
  return amps * Math.exp(-PRIORS.runningAmps.perDegree.mean * colder);
}

/** The supply of a stroke as a part of what values are brought to; 1 where nobody recorded it. */
function partOfReference({ state, analysis: { supplyVolts } }: FindingContext): number {
  if (supplyVolts === null) return 1;
  return asOfTwelveVolts(supplyVolts, state.room.nominalVolts) / REFERENCE_VOLTS;
}

/**
 * What a side draws at standstill, amperes: only a stall that was held long enough to be read, for an inrush is over before
 * a slow logger sees its peak. Null where none was, and where a logger that woke late, after the start, leaves nothing to
 * hold an end against that rose little: then it is a seal as well as a stall.
 */
function stallOf({ endStopAmps, inrushAmps, runningAmps, phases, rateHz }: SideMeasures): number | null {
  if (endStopAmps === null || endStopAmps < STALL_OF_START * inrushAmps) return null;
  const holdsStart = phases.startS > 1 / (rateHz ?? Number.POSITIVE_INFINITY);
  const stallAmps = Math.max(inrushAmps, endStopAmps);
  return holdsStart || stallAmps >= LEAST_STANDSTILL * runningAmps ? stallAmps : null;
}
