import { endsAtStandstill } from '../../baseline/endsAtStandstill.ts';
import { stallsAsEver } from '../../baseline/stallsAsEver.ts';
import { channelOf } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import type { FindingContext } from '../finding.ts';
import { SCALE_STROKES } from './scaleMemory.ts';

/**
 * Cold copper may raise a stall by this, natural logarithm (45 degrees of 0.393 %): a smaller change tells no scale.
 */
const MOST_WEATHER = 0.18;
/**
 * A start must be this many times the running current: a lower one may be no more than what the room then runs with.
 */
const CLEAR_START = 2.5;

/**
 * If the other sides' stall currents moved by more than this part of the own, they share the move: cold copper, or the
 * supply.
 */
const SHARED_PART = 0.5;
/**
 * The most that weather and supply together do to a stall: a larger shared move is the logger's scale. Where
 * temperature and supply are both recorded, only the motor's own warmth is left for a fall. Natural logarithms;
 * guesses, no source.
 */
const MOST_SHARED = { fall: 0.15, weather: MOST_WEATHER + 0.06, supplyToo: MOST_WEATHER + 0.2 };

/**
 * How much a side's stall current rose over the latest strokes, natural logarithm. Null where it was not read, or where
 * the other sides share the move and weather or supply may do as much.
 *
 * The stall at the end stop lasts and is read well. The inrush may be over before a slow logger sees its peak, but the
 * peaks of all sides fall between the same two samples: so the others' rise is taken off.
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

/** Whether a stall at the end stop was read on this stroke and before, with all sides stalling as usual. */
export function readsStop({ state, analysis, direction, residual }: FindingContext, side: string): boolean {
  if (residual(side, 'endStopAmps') === null || state.scale[side].endStop.length < 2) return false;
  if (!endsAtStandstill(analysis.sides[side])) return false;
  return stallsAsEver(channelOf(state, side, direction), analysis);
}
