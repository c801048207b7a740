import { Random } from '../../../server/demo/simulator/random.ts';
import type { ToldEvent } from '../playFleet.ts';
import { driveStroke } from './driveStroke.ts';
import type { CableMember } from './fleet.ts';
import { recordStroke } from './recordStroke.ts';
import { soundCondition } from './soundCondition.ts';

/** An armature loses the warmth of a stroke in so long. */
const COOLING_MS = 15 * 60_000;

/** Plays a room's life, stroke by stroke. */
export function* cableHistory({ seed, room, life, fault }: CableMember): Generator<ToldEvent> {
  const seeds = new Random(seed ^ 0x0cab1e);
  let warmC: readonly number[] = room.sides.map(() => 0);
  let lastMs = 0;
  for (const [index, lived] of life.entries()) {
    const random = seeds.fork();
    if (lived.service !== null) yield { type: 'service', ...lived.service };
    if (fault?.service?.beforeStroke === index) {
      yield {
        type: 'service',
        atMs: Math.round(lived.atMs - 0.05 * (lived.atMs - lastMs)),
        kind: fault.service.kind,
        side: null,
      };
    }
    const cooled = Math.exp(-(lived.atMs - lastMs) / COOLING_MS);
    const condition = soundCondition(
      room,
      lived,
      warmC.map((warm) => warm * cooled),
    );
    if (fault !== null && index >= fault.startsStroke) fault.change(condition, index, lived, random.fork());
    const tape = driveStroke(room, lived.direction, condition);
    warmC = tape.warmC;
    lastMs = lived.atMs;
    yield {
      type: 'stroke',
      index,
      broken: Math.abs(lived.to - lived.from) < 1,
      stroke: recordStroke(room, lived, condition, tape, random),
    };
  }
}
