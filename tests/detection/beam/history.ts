import type { ToldEvent } from '../playFleet.ts';
import { restCondition } from './condition.ts';
import type { BeamMember } from './fleet.ts';
import { integrate } from './integrate.ts';
import { recordOf } from './logger.ts';
import { Random } from './random.ts';
import { standingAtEnd } from './referenceStroke.ts';

/** A room's strokes and services, in the order in which they happened. */
export function* beamHistory({ plant, seed, fault, calendar, nuisances }: BeamMember): Generator<ToldEvent> {
  const services = [...nuisances.services, ...(fault?.services ?? [])].sort(
    (a, b) => a.beforeStroke - b.beforeStroke,
  );
  let standing = standingAtEnd(plant, 'extend');
  let lastMs = calendar[0].atMs - 1;
  for (const planned of calendar) {
    for (; services.length > 0 && services[0].beforeStroke <= planned.index; services.shift()) {
      const { kind, side } = services[0];
      lastMs += Math.floor((planned.atMs - lastMs) / 3);
      yield { type: 'service', atMs: lastMs, kind, side };
    }
    lastMs = planned.atMs;
    const condition = restCondition(plant, planned.index, planned.direction);
    condition.atMs = planned.atMs;
    nuisances.apply(condition, planned);
    if (fault !== null && planned.index >= fault.startsStroke) {
      fault.apply(condition, Random.of(seed, 80_000 + planned.index));
    }
    const course = integrate(plant, condition, standing, Random.of(seed, 90_000 + planned.index));
    standing = course.end;
    const stroke = recordOf(plant, condition, course, Random.of(seed, 110_000 + planned.index));
    yield { type: 'stroke', index: planned.index, stroke, broken: planned.broken };
  }
}
