import { Random } from '../../../server/demo/simulator/random.ts';
import type { ToldEvent } from '../playFleet.ts';
import { driveStroke } from './driveStroke.ts';
import type { WindingMember } from './fleet.ts';
import { Life } from './life.ts';
import { type Move, planMoves } from './moves.ts';
import { recordStroke } from './recordStroke.ts';
import type { StrokeState } from './strokeState.ts';
import { emptyTape } from './tape.ts';
import { DAY_MS } from './variants.ts';

/** Tells a room's life in time order: its strokes as the logger sends them, and the work done on it. */
export function* windingHistory(member: WindingMember): Generator<ToldEvent> {
  const { room, variants, fault, strokes } = member;
  const random = new Random(member.seed ^ 0x5f3759df);
  const moves = planMoves(strokes, variants, random.fork());
  const life = new Life(room, variants, random.fork());
  const tape = emptyTape(room.motors.length, 2.5 * room.durationS + 12);
  for (const move of moves) {
    // What one stroke draws shifts no other's, so a fault leaves the strokes before it as they were.
    const own = random.fork();
    yield* servicesBefore(member, move);
    const state = life.stateOf(move, own.fork());
    const faulty = own.fork();
    if (fault !== null && move.index >= fault.bearsFrom && move.index < fault.untilStroke) {
      fault.bear(state, move.index, faulty);
    }
    driveStroke(room, state, life.windingC(move, state.ambientC), tape);
    life.remember(move, tape);
    const stroke = recordStroke(room, state, tape, life.logger(move.index), move.atMs, own.fork());
    yield { type: 'stroke', index: move.index, stroke, broken: move.isBroken || isPartial(state) };
  }
}

/** Begun in mid-travel or let go there. */
function isPartial(state: StrokeState): boolean {
  const along = state.direction === 'extend' ? state.startPosition : 1 - state.startPosition;
  return along > 0.05 || state.stopAtPart !== null;
}

function* servicesBefore({ variants, fault }: WindingMember, move: Move): Generator<ToldEvent> {
  const atMs = move.atMs - 0.4 * DAY_MS;
  if (variants.service?.beforeStroke === move.index) {
    yield { type: 'service', atMs, kind: variants.service.kind, side: null };
  }
  for (const { beforeStroke, kind, side } of fault?.services ?? []) {
    if (beforeStroke === move.index) yield { type: 'service', atMs, kind, side };
  }
}
