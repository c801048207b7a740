import type { ToldEvent } from '../playFleet.ts';
import { drawCamps } from './calendar.ts';
import type { StrokeCondition } from './condition.ts';
import type { RecorderMember } from './fleet.ts';
import { runStroke } from './motion.ts';
import { layOutMovements, type Movement } from './movements.ts';
import { Random } from './random.ts';
import { recordStroke } from './recordStroke.ts';
import { usualCondition } from './usual.ts';

/** Tells a room's strokes and services in the order in which they happened. */
export function* recorderHistory(member: RecorderMember): Generator<ToldEvent> {
  const { room, fault, nuisances, strokes } = member;
  const random = new Random(member.seed);
  const storage = random.branch('storage');
  const camps = drawCamps(Math.ceil(strokes / 2) + 1, room.places, random.branch('camps'));
  const stored = storage.chance(0.2) ? storage.whole(12, camps.length - 8) : Number.POSITIVE_INFINITY;
  const rests = storage.whole(1, 2) * 365 * 86_400_000;
  const stays = camps.map((camp, at) =>
    at < stored
      ? camp
      : {
          ...camp,
          arrivesAtMs: camp.arrivesAtMs + rests,
          leavesAtMs: camp.leavesAtMs + rests,
          restedDays: camp.restedDays + (at === stored ? rests / 86_400_000 : 0),
        },
  );
  const halves = storage.chance(0.15) ? storage.between(0.005, 0.02) : 0.003;
  const services = [...nuisances.flatMap((nuisance) => nuisance.services), ...(fault?.services ?? [])];
  for (const movement of layOutMovements(stays, strokes, halves, random.branch('movements'))) {
    for (const { kind, side } of services.filter(({ beforeStroke }) => beforeStroke === movement.index))
      yield { type: 'service', atMs: movement.atMs - 3_600_000, kind, side };
    yield {
      type: 'stroke',
      index: movement.index,
      stroke: recordStroke(
        room,
        ...conditionAndMotion(member, movement, random),
        movement.atMs,
        random.branch(`record ${movement.index}`),
      ),
      broken: movement.broken,
    };
  }
}

function conditionAndMotion(member: RecorderMember, movement: Movement, random: Random) {
  const { room } = member;
  const condition = conditionOf(member, movement, random);
  return [condition, runStroke(room, condition, random.branch(`motion ${movement.index}`))] as const;
}

/** The condition of one stroke with all that troubles the room by then. */
function conditionOf(
  { room, fault, nuisances, strokes }: RecorderMember,
  movement: Movement,
  random: Random,
): StrokeCondition {
  let condition = usualCondition(room, movement, movement.index / strokes, random.branch('usual'));
  nuisances.forEach((nuisance) => {
    const source = random.branch(`${nuisance.name} ${movement.index}`);
    condition = nuisance.change(condition, movement, source);
  });
  if (fault === null) return condition;
  return fault.change(condition, movement, random.branch(`fault ${movement.index}`));
}
