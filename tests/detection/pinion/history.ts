import { Random } from '../../../server/demo/simulator/random.ts';
import type { ToldEvent } from '../playFleet.ts';
import { conditionOf } from './conditionOf.ts';
import type { PinionMember } from './fleet.ts';
import { logStroke } from './logStroke.ts';
import { coolUntil, restAtStart } from './motion.ts';
import { runStroke } from './runStroke.ts';

const HOUR_MS = 3_600_000;

/** The room's life, stroke by stroke, as its logger and its people tell it. */
export function* pinionHistory({ seed, plant, habits, planned, fault }: PinionMember): Iterable<ToldEvent> {
  const random = new Random(seed ^ 0x5f3759df);
  const rest = restAtStart(plant);
  const services = [...habits.services, ...(fault?.services ?? [])];
  for (const [index, stroke] of planned.entries()) {
    for (const { beforeStroke, kind, side } of services) {
      if (beforeStroke === index) yield { type: 'service', atMs: stroke.atMs - HOUR_MS, kind, side };
    }
    const condition = conditionOf(plant, habits, stroke, index, random.fork());
    const own = random.fork();
    // A story that begins with a service was already under way before it.
    if (fault !== null && (index >= fault.startsStroke || fault.services.length > 0))
      fault.worsen(condition, stroke, index, own);
    coolUntil(rest, plant, stroke.atMs);
    const run = runStroke(plant, condition, stroke.direction, rest);
    const record = logStroke(plant, condition, stroke, run, random.fork());
    yield { type: 'stroke', index, stroke: record, broken: stroke.isBroken };
  }
}
