import type { Channel } from '../baseline/channel.ts';
import { compareAnew, relearn } from '../baseline/learn.ts';
import { beginHeavyMemory } from '../findings/heavyRoom/heavyMemory.ts';
import { restLoad } from '../findings/load/loadMemory.ts';
import { beginScaleMemory } from '../findings/sensorDoubt/scaleMemory.ts';
import { MEASURE_INDEX } from '../measures.ts';
import type { RoomState } from '../roomState.ts';
import { median } from '../statistics/median.ts';
import { lendNoMore } from './lendStroke.ts';

/** Weather and the ground make a stroke of a heavy room no lighter than this part of its usual ones. A guess, no source. */
const AS_HEAVY = 0.9;

/**
 * A room that was heavy and is no longer begins a new baseline, as after work that was recorded: what it was is neither normal
 * nor what the next strokes are to be held against. `sides`: those that were.
 */
export function learnEasedAnew(state: RoomState, sides: readonly string[]): void {
  for (const channel of state.channels) {
    if (!sides.includes(channel.side)) compareAnew(channel);
    else if (knowsHeavy(state, channel)) relearn(channel);
  }
  for (const side of sides) {
    lendNoMore(state, side);
    state.heavy[side] = beginHeavyMemory();
    state.scale[side] = beginScaleMemory();
  }
  restLoad(state.load);
}

/** Whether the baseline was learnt, if only in part, from strokes that were heavy: not where it began anew with the work. */
function knowsHeavy({ heavy }: RoomState, channel: Channel): boolean {
  const { side, direction, values } = channel;
  const former = median(heavy[side].amps[direction]);
  const learnt = values.map((stroke) => stroke[MEASURE_INDEX.runningAmps]).filter((value) => value !== null);
  return learnt.some((value) => !(value < Math.log(AS_HEAVY * former)));
}
