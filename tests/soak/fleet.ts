import { Random } from '../../server/demo/simulator/random.ts';
import type { StrokeRecord } from '../../server/demo/simulator/strokeRecord.ts';
import { drawRooms, type FleetRoom } from '../detection/fleets.ts';
import { type Caller, insist } from './insist.ts';

/** What happens in a room, by a name that is its own in the whole run. */
export type SoakEvent =
  | { readonly type: 'stroke'; readonly key: string; readonly stroke: StrokeRecord }
  | {
      readonly type: 'service';
      readonly key: string;
      readonly service: { readonly kind: string; readonly at: string; readonly side?: string };
    };

/** A room of a simulated fleet. */
export interface SoakRoom {
  readonly name: string;
  readonly model: string;
  readonly member: FleetRoom;
  /** In the order of time; each made when it is first asked for, and kept. */
  readonly events: () => Iterable<SoakEvent>;
}

/** A room in a service, with the logger of its coach. */
export interface RoomThere {
  readonly roomId: string;
  readonly coachId: string;
  readonly loggerToken: string;
}

export const STROKES_A_ROOM = 240;
const MODELS = ['Heron 30', 'Plover 27', 'Curlew 34'];

/** Rooms of both simulated fleets in turn, half of them faulty, of a few models that lend each other their normal. */
export function drawSoakRooms(seed: number, count: number): SoakRoom[] {
  const each = Math.ceil(count / 2);
  const fleets = (['motor', 'plain'] as const).map((fleet) => drawRooms(fleet, seed, each, STROKES_A_ROOM));
  return Array.from({ length: count }, (_, i) => {
    const name = `Room ${i}`;
    const member = fleets[i % 2][i >> 1];
    return { name, model: MODELS[i % MODELS.length], member, events: kept(eventsOf(name, member)) };
  });
}

/** What a generator yields, to be gone through as often as one likes. */
function kept<Item>(source: Iterator<Item>): () => Iterable<Item> {
  const made: Item[] = [];
  return function* () {
    for (let i = 0; ; i++) {
      if (i === made.length) {
        const next = source.next();
        if (next.done) return;
        made.push(next.value);
      }
      yield made[i];
    }
  };
}

function* eventsOf(name: string, member: FleetRoom): Generator<SoakEvent> {
  let count = 0;
  for (const event of member.events()) {
    const key = `${name} / ${count++}`;
    if (event.type === 'stroke') yield { type: 'stroke', key, stroke: event.stroke };
    else {
      const at = new Date(event.atMs).toISOString();
      const side = event.side === null ? {} : { side: event.side };
      yield { type: 'service', key, service: { kind: event.kind, at, ...side } };
    }
  }
}

/** One of so many is held back by a day's worth of others, and a few for weeks, as loggers without a network do. */
const LATE = { one: 0.2, by: 6 };
const VERY_LATE = { one: 0.03, by: 80 };

/** The same events in the order in which they come in. */
export function* asTheyComeIn(room: SoakRoom, seed: number): Generator<SoakEvent> {
  const random = new Random(seed);
  const held: { readonly event: SoakEvent; readonly due: number }[] = [];
  let place = 0;
  for (const event of room.events()) {
    place += 1;
    if (random.chance(VERY_LATE.one)) held.push({ event, due: place + VERY_LATE.by });
    else if (random.chance(LATE.one)) held.push({ event, due: place + random.integer(1, LATE.by) });
    else yield event;
    for (let i = held.length - 1; i >= 0; i--) if (held[i].due <= place) yield held.splice(i, 1)[0].event;
  }
  for (const { event } of held) yield event;
}

/** Makes coach, room and logger, once however often it has to ask. */
export async function makeRoom(caller: Caller, room: SoakRoom): Promise<RoomThere> {
  const make = async (path: string, body: object) => {
    const headers = { 'idempotency-key': `${room.name} ${path}` };
    const answer = await insist(caller, 'POST', path, { body, headers });
    if (answer.status !== 201) throw new Error(`${path} answered ${answer.status}: ${answer.text}`);
    return answer.body;
  };
  const coach = await make('/coaches', { name: `Coach of ${room.name}`, model: room.model });
  const known = Object.entries(room.member.room).filter(([name, value]) => value !== null && NAMED.has(name));
  const { id: roomId } = await make(`/coaches/${coach.id}/rooms`, {
    name: room.name,
    ...Object.fromEntries(known),
  });
  const logger = await make(`/coaches/${coach.id}/loggers`, { name: 'Board', sensor: 'clamp' });
  return { roomId, coachId: coach.id, loggerToken: logger.token };
}

/** What of a room's description a request may say. */
const NAMED = new Set([
  'drive',
  'sides',
  'travelMetres',
  'gearTeeth',
  'rackPitchMm',
  'ratedAmps',
  'nominalVolts',
  'positiveDirection',
]);
