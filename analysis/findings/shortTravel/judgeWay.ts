import type { Warning } from '../../warning.ts';
import type { FindingContext } from '../finding.ts';
import { isFasterOnly } from './fasterOnly.ts';
import { lacksOwnEnd, noteMissingEnd } from './lackedEnd.ts';
import { SHORT_WITHOUT_STOP, stopsUsually } from './shortSigns.ts';
import { openFor } from './shortTravelSaid.ts';
import type { TravelMade } from './travelMade.ts';

/** What was said goes on while the motor makes fewer turns by this part of it. */
const AS_FEW_PART = 0.6;

/** One stroke that is a whole way by itself, and what speaks for its being short. */
export interface JudgedWay {
  readonly made: TravelMade;
  /** Natural logarithm; 0: it was not. */
  readonly shortBy: number;
  /** The same by its course alone; null: that tells of none. */
  readonly lacking: number | null;
  readonly stopped: boolean;
}

/** By how much a stroke was short, and by what; must come once for each, for what it lacks is remembered. */
export function judgeWay(context: FindingContext, made: TravelMade, stopped: boolean): JudgedWay {
  const open = openFor(context);
  const own = context.state.travel[context.direction];
  const lacks = lacksOwnEnd(context, made);
  const lacking = lacks !== null && lacks > made.most ? null : lacks;
  const mayBeWhole = (stopped || !stopsUsually(own)) && made.shortBy > SHORT_WITHOUT_STOP;
  const byTime = isFasterOnly(context, made, mayBeWhole) ? 0 : made.shortBy;
  const shortBy = Math.max(byTime, lacking ?? 0, open === undefined ? 0 : asFewTurns(open, made));
  noteMissingEnd(context, shortBy);
  return { made, shortBy, lacking, stopped };
}

/**
 * How much shorter than expected a stroke was whose motor made as few turns as those that were said to end early, natural
 * logarithm; 0: it made more, or they were not counted. What else could explain it could not when it was said.
 */
function asFewTurns({ evidence }: Warning, { fewerTurns }: TravelMade): number {
  const said = -Math.log1p(-(evidence.shortPercent ?? 0) / 100);
  return fewerTurns !== null && fewerTurns > AS_FEW_PART * said ? Math.min(fewerTurns, said) : 0;
}
