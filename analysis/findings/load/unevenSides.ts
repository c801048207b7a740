import { isBackEachWay } from '../charts/shiftChart.ts';
import { type FindingAnswer, type FindingContext, NOTHING, openOf } from '../finding.ts';
import { restLoad } from './loadMemory.ts';
import type { LoadShift } from './loadShift.ts';

/**
 * Moves of the share from which on the severity is `service` or `stop`, and below which the share is going back to
 * normal. Guesses, no source.
 */
const SERVICE_SHIFT = 0.08;
const STOP_SHIFT = 0.2;
const GOING_BACK = 0.02;
/** A smaller move of the share than this is none. */
const LEAST_SHIFT = 0.012;
/**
 * The side that takes over rose by at least this part of the other's fall: if one side merely reads less, the other
 * took nothing from it.
 */
const TAKEN_PART = 0.2;

function takesOver({ rises }: LoadShift): boolean {
  const all = [...rises.values()];
  return Math.max(...all) > -TAKEN_PART * Math.min(...all);
}

/**
 * The share of the load between the two sides has moved from the room's own normal while the load as a whole did not
 * grow: one side works harder because the other works less. A rise of one side alone is `rising-draw`, which explains a
 * moved share and comes first; so does a side that is late.
 */
export function unevenSides(context: FindingContext, load: LoadShift): FindingAnswer {
  const { state } = context;
  const [open] = openOf(state, 'uneven-sides');
  const { share } = state.load;
  const sign = open?.side === state.room.sides[0] ? 1 : -1;
  if (open !== undefined && isBackEachWay(share, sign, Math.max(LEAST_SHIFT, share.deviation))) {
    restLoad(state.load);
    return { present: [], gone: [open] };
  }
  // A side that comes late leaves the other to drag the room meanwhile.
  const isDragging = openOf(state, 'late-side').some(({ side }) => side !== load.taker);
  const explained = isDragging || openOf(state, 'rising-draw').length > 0;
  const raised = load.taker !== null && load.moved && takesOver(load) && !explained;
  if (open === undefined && !raised) return NOTHING;
  const side = load.taker ?? open?.side ?? state.room.sides[0];
  const points = side === state.room.sides[0] ? load.shareShift : -load.shareShift;
  // On the way back to normal the warning stays as it is, until it is cleared.
  if (open !== undefined && points < GOING_BACK) return { present: [open], gone: [] };
  const other = state.room.sides.find((name) => name !== side) ?? side;
  const whole = Math.round(100 * points);
  return {
    present: [
      {
        kind: 'uneven-sides',
        side,
        direction: null,
        position: null,
        pattern: null,
        severity: points >= STOP_SHIFT ? 'stop' : points >= SERVICE_SHIFT ? 'service' : 'watch',
        headline: `The ${side} side now carries ${whole} % of the room's load that the ${other} side used to carry.`,
        evidence: {
          sharePoints: Math.round(1000 * points) / 10,
          shareNow: Math.round(1000 * (context.analysis.share?.[side] ?? 0)) / 1000,
          sigmas: Math.round((10 * points) / Math.max(1e-9, state.load.share.deviation)) / 10,
        },
      },
    ],
    gone: [],
  };
}
