import { isBorrowing } from '../../baseline/channel.ts';
import type { Evidence } from '../../evidence.ts';
import { nameSide } from '../../names.ts';
import type { RoomState } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import { type FindingAnswer, type FindingContext, NOTHING, openOf } from '../finding.ts';
import { drawn, isFromFirstOn, loadOf, shouldNeed } from './heavyLoad.ts';
import { byModel, FAR_ABOVE, heavyRatio } from './heavyRatio.ts';
import { FIRST_STROKES, noteHeavy } from './noteHeavy.ts';

/** What was said is over below this, and grave from so many times what a side should stay under on. Guesses, no source. */
const NO_MORE = 1.1;
const STOP_ABOVE = 2;

/**
 * The running current is far above the rated one from the first strokes on. The median of a side's first strokes in the
 * direction that takes more is told against `ratedAmps`, the cold allowed for; and against what rooms of the same coach
 * model need, where there are any.
 */
export function heavyRoom(context: FindingContext): FindingAnswer {
  const { state } = context;
  const seen = state.usable.extend + state.usable.retract;
  const [open] = openOf(state, 'heavy-room');
  if (open === undefined && seen > FIRST_STROKES) return NOTHING;
  noteHeavy(context);
  const ratios = state.room.sides.map((side) => heavyRatio(context, side));
  const heavy = state.room.sides.filter((name, i) => {
    const ratio = ratios[i] ?? 0;
    return open === undefined ? ratio >= FAR_ABOVE && !isRise(state, name) : ratio >= NO_MORE;
  });
  if (heavy.length === 0) return open === undefined ? NOTHING : { present: [], gone: [open] };
  const worst = Math.max(...ratios.map((ratio) => ratio ?? 0));
  const every = heavy.length === state.room.sides.length && heavy.length > 1;
  const side = every ? null : heavy[0];
  const amps = Math.round(10 * Math.max(...heavy.map((name) => drawn(state.heavy[name]).most))) / 10;
  const who = side === null ? 'Each side' : nameSide(side, state.room.sides);
  const { should, evidence } = standard(context, heavy, amps);
  const headline = `${who} draws ${every ? 'up to ' : ''}${amps} A; ${should}. It has been so from the first strokes on.`;
  return {
    present: [
      {
        kind: 'heavy-room',
        side,
        severity: worst >= STOP_ABOVE ? 'stop' : 'service',
        headline: `${headline[0].toUpperCase()}${headline.slice(1)}`,
        evidence: { runningAmps: amps, ...evidence },
      },
    ],
    gone: [],
  };
}

/** Whether a side came to draw as much after lighter strokes, which a borrowed normal tells: a room that learns by itself has none to tell it. */
function isRise({ channels, heavy }: RoomState, side: string): boolean {
  const borrows = channels.some((channel) => channel.side === side && isBorrowing(channel));
  return borrows && !isFromFirstOn(heavy[side]);
}

/** What the heavy sides are told against, in words and in numbers; `amps`: what they draw. */
function standard(
  context: FindingContext,
  heavy: readonly string[],
  amps: number,
): { should: string; evidence: Evidence } {
  const { ratedAmps } = context.state.room;
  const times = (least: number) => Math.round((100 * amps) / least) / 100;
  if (heavy.every((name) => byModel(context, name))) {
    const model = modelAmps(context, heavy);
    const should = `rooms of the same model need about ${model} A`;
    return { should, evidence: { modelAmps: model, timesModel: times(model) } };
  }
  const loads = heavy.map((name) => loadOf(context.state.heavy[name], context.state.room));
  if (ratedAmps === null && loads.every(({ needed, overload }) => overload > needed)) {
    const stall = Math.round(10 * Math.min(...loads.map(({ stallAmps }) => stallAmps))) / 10;
    const should = `it stalls at ${stall} A already, and no motor of any drive should run so near its stall`;
    return { should, evidence: { stallAmps: stall, partOfStall: times(stall) } };
  }
  const limit = ratedAmps ?? shouldNeed(context.state.room);
  const should = `a healthy one of this ${ratedAmps === null ? 'kind of drive' : 'room'} should stay under ${limit} A`;
  return { should, evidence: { limitAmps: limit, timesLimit: times(limit) } };
}

function modelAmps({ state }: FindingContext, sides: readonly string[]): number {
  const amps = sides.map((side) => median(state.heavy[side].above.map((stroke) => stroke.modelAmps)));
  return Math.round(10 * Math.max(...amps)) / 10;
}
