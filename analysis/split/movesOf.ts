import type { SideSignal } from '../stroke/signal/sideSignal.ts';
import type { HeldLevels } from './heldLevels.ts';

/** What falls for less, seconds, as a load that is only just set in motion does after its start, moves on. */
const LONGEST_DIP_S = 0.5;
/** What lasts for less, seconds, is no movement: the drive settles, or shakes. */
const SHORTEST_MOVE_S = 1;

/** One movement, seconds; and how long it lasts, without the rests within it. */
export interface Move {
  readonly fromS: number;
  readonly toS: number;
  readonly lastsS: number;
}

/** The movements of a motor that is held in place, in order: where its current stands above the level that holds it. */
export function movesOf(
  { timesS, stepS }: Pick<SideSignal, 'timesS' | 'stepS'>,
  { slow, aboveAmps }: Pick<HeldLevels, 'slow' | 'aboveAmps'>,
): Move[] {
  const moves: Move[] = [];
  for (let i = 0; i < slow.length; i++) {
    if (slow[i] <= aboveAmps) continue;
    const last = moves.at(-1);
    const goesOn = last !== undefined && timesS[i] - last.toS <= LONGEST_DIP_S;
    const fromS = goesOn ? last.fromS : timesS[i];
    const toS = timesS[i] + stepS;
    if (goesOn) moves.pop();
    moves.push({ fromS, toS, lastsS: toS - fromS });
  }
  return moves.filter(({ lastsS }) => lastsS >= SHORTEST_MOVE_S);
}
