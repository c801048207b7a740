import { endsAtStandstill } from '../../baseline/endsAtStandstill.ts';
import { stallsAsEver } from '../../baseline/stallsAsEver.ts';
import { channelOf } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import type { FindingContext } from '../finding.ts';
import { SCALE_STROKES } from './scaleMemory.ts';

/** A stall that cold copper may have made as well tells no scale, natural logarithm: 45 degrees of 0.393 %. */
const MOST_WEATHER = 0.18;
/** A start that stands out less may be no more than the current that the room then runs with. */
const CLEAR_START = 2.5;

/** Both sides' stall currents moved alike, by at least this part: that is cold copper, or the supply. */
const SHARED_PART = 0.5;
/**
 * What both together do at most to a stall: what moves more is the logger's scale. A temperature that was recorded, as the
 * supply was, leaves little of a fall: the motor's own warmth. Guesses, no source.
 */
const MOST_SHARED = { fall: 0.15, weather: MOST_WEATHER + 0.06, supplyToo: MOST_WEATHER + 0.2 };

/**
 * How much a side's stall current rose over the latest strokes; null where it was not read, or where the other sides
 * share it and weather or supply may do as much. The stall at the end stop lasts and is read well. The inrush is over
 * before a slow logger sees its peak, but the peaks of all sides fall between the same two samples: what the others'
 * rose is taken off.
 */
export function stallRise(context: FindingContext, side: string): number | null {
  const { state, analysis } = context;
  const atStop = readsStop(context, side);
  const read = (name: string): number | null => {
    const list = atStop ? state.scale[name].endStop : state.scale[name].inrush;
    return list.length < (atStop ? 2 : SCALE_STROKES) ? null : median(list);
  };
  const own = read(side);
  const others = state.room.sides
    .filter((name) => name !== side)
    .map(read)
    .filter((rise) => rise !== null);
  if (own === null || others.length === 0) return own;
  const shared = others.every((other) => other / own > SHARED_PART);
  const { inrushAmps, runningAmps } = analysis.sides[side];
  const most = mostShared(context, own);
  if (shared && Math.abs(own) > most && (atStop || inrushAmps > CLEAR_START * runningAmps)) return own;
  if (!atStop) return own - median(others);
  return shared ? null : own;
}

function mostShared({ conditions: [supply, temperature] }: FindingContext, own: number): number {
  if (supply === null) return MOST_SHARED.supplyToo;
  return temperature === null || own > 0 ? MOST_SHARED.weather : MOST_SHARED.fall;
}

/** Whether a stall at the end stop, of all sides as ever, was read on this stroke and before. */
export function readsStop({ state, analysis, direction, residual }: FindingContext, side: string): boolean {
  if (residual(side, 'endStopAmps') === null || state.scale[side].endStop.length < 2) return false;
  if (!endsAtStandstill(analysis.sides[side])) return false;
  return stallsAsEver(channelOf(state, side, direction), analysis);
}
