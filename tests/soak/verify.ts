import type { StrokeRecord } from '../../server/demo/simulator/strokeRecord.ts';
import { makeRoom, type RoomThere, type SoakRoom } from './fleet.ts';
import { type Caller, insist } from './insist.ts';
import type { Promised } from './senders.ts';

const MEASURES = ['runningAmps', 'inrushAmps', 'durationS', 'chargeAs', 'share', 'lagS', 'roughness'];
const ID = /[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/g;
const BATCH = 100;
/** A stroke whose clock cannot be right is placed when it arrives: at another time here than there. */
const TIME = /"\d{4}-\d\d-\d\dT[\d:.]+Z"/g;
const BEGAN_MS = Date.now();
/** No clock that is right says a time before this. */
const EARLIEST_MS = Date.UTC(2015, 0);

type StrokeToSend = StrokeRecord & { readonly key: string; readonly roomId: string };

/** Everything that was acknowledged is there once, with the samples that were sent; answers what is not so. */
export async function missingOf(person: Caller, promised: Promised): Promise<string[]> {
  const faults: string[] = [];
  const { room, there, strokes } = promised;
  await settled(person, there);
  const listed = new Map<string, string>();
  for (const { key, id } of await strokesOf(person, there)) {
    if (listed.has(key)) faults.push(`${key} is stored twice.`);
    listed.set(key, id);
  }
  for (const [key, id] of strokes)
    if (listed.get(key) !== id) faults.push(`${key} was acknowledged as ${id} and is ${listed.get(key)}.`);
  if (listed.size !== strokes.size)
    faults.push(`${room.name} has ${listed.size} strokes, and ${strokes.size} were acknowledged.`);
  for (const event of room.events()) {
    const id = strokes.get(event.key);
    if (event.type !== 'stroke' || id === undefined) continue;
    const trace = (await insist(person, 'GET', `/strokes/${id}/trace`)).body;
    if (JSON.stringify(trace.sides) !== JSON.stringify(sidesAsTold(event.stroke)))
      faults.push(`The samples of ${event.key} are not those that were sent.`);
  }
  return faults;
}

/** The samples as the service tells them: milliamps become amps. */
function sidesAsTold({ sides }: StrokeRecord): unknown[] {
  return sides.map(({ side, rateHz, t, amps, milliamps }) => ({
    side,
    ...(t === undefined ? { rateHz } : { t }),
    amps: amps ?? milliamps?.map((value) => value / 1000),
  }));
}

/**
 * The same rooms in a service that nothing happens to, each at one go and in the order of time: for strokes whose clock
 * cannot be right that is the order in which they came to the service in turmoil, which `placed` tells.
 */
export async function sendQuietly(
  person: Caller,
  all: readonly Promised[],
  placed: (promised: Promised) => Promise<string[]>,
): Promise<Promised[]> {
  const quiet: Promised[] = [];
  for (const promised of all) {
    const { room, services } = promised;
    const there = await makeRoom(person, room);
    const copy: Promised = { room, there, strokes: new Map(), services: new Map() };
    quiet.push(copy);
    const caller = { url: person.url, token: there.loggerToken };
    for (const event of room.events()) {
      if (event.type !== 'service' || !services.has(event.key)) continue;
      const path = `/rooms/${there.roomId}/services`;
      copy.services.set(event.key, (await insist(person, 'POST', path, { body: event.service })).body.id);
    }
    const bodies = bodiesOf(promised, there);
    const order = await placed(promised);
    for (const body of batchesOf(order.flatMap((key) => bodies.get(key) ?? []))) {
      const answer = await insist(caller, 'POST', '/strokes', { body });
      for (const { key, strokeId } of answer.body.results) copy.strokes.set(key, strokeId);
    }
  }
  for (const { there } of quiet) await settled(person, there);
  return quiet;
}

/** The keys of a room's strokes in the order in which they count. */
export async function placedIn(person: Caller, { there }: Promised): Promise<string[]> {
  return (await strokesOf(person, there)).map(({ key }) => key).reverse();
}

/** Those of one batch arrive at one moment: strokes that are placed by it come one by one, after all others. */
function batchesOf(bodies: readonly StrokeToSend[]): StrokeToSend[][] {
  const isPlacedOnArrival = ({ startedAt }: StrokeToSend): boolean => {
    const startedMs = Date.parse(startedAt);
    return startedMs < EARLIEST_MS || startedMs > BEGAN_MS;
  };
  const ordinary = bodies.filter((body) => !isPlacedOnArrival(body));
  const batches: StrokeToSend[][] = [];
  for (let i = 0; i < ordinary.length; i += BATCH) batches.push(ordinary.slice(i, i + BATCH));
  return [...batches, ...bodies.filter(isPlacedOnArrival).map((body) => [body])];
}

function bodiesOf({ room, strokes }: Promised, { roomId }: RoomThere): Map<string, StrokeToSend> {
  const bodies = new Map<string, StrokeToSend>();
  for (const event of room.events())
    if (event.type === 'stroke' && strokes.has(event.key))
      bodies.set(event.key, { ...event.stroke, key: event.key, roomId });
  return bodies;
}

/** All that is said of a room, with names in place of ids, a line for each question. */
export async function answersOf(
  person: Caller,
  { room, there, strokes, services }: Promised,
): Promise<string[]> {
  await settled(person, there);
  const names = new Map([...strokes, ...services].map(([key, id]) => [id, key]));
  const paths = ['status', 'warnings?state=all&limit=500', ...trendsOf(room)];
  const lines: string[] = [];
  for (const path of paths) {
    const { status, body } = await insist(person, 'GET', `/rooms/${there.roomId}/${path}`);
    lines.push(`${path} ${status} ${JSON.stringify(body)}`);
  }
  for (const stroke of await strokesOf(person, there)) lines.push(JSON.stringify(stroke));
  return lines.map((line) =>
    line
      .replaceAll(/"(id|createdAt|updatedAt|receivedAt)":"[^"]*"/g, '"$1":"…"')
      .replaceAll(TIME, (time) => (Date.parse(JSON.parse(time)) < BEGAN_MS ? time : '"on arrival"'))
      .replaceAll(ID, (id) => names.get(id) ?? '…'),
  );
}

function trendsOf({ member }: SoakRoom): string[] {
  return MEASURES.flatMap((measure) =>
    ['extend', 'retract'].flatMap((direction) =>
      member.room.sides.map((side) => `trend?${new URLSearchParams({ measure, direction, side })}`),
    ),
  );
}

async function strokesOf(person: Caller, { roomId }: RoomThere): Promise<{ id: string; key: string }[]> {
  const items: { id: string; key: string }[] = [];
  for (let cursor = ''; ; ) {
    const { body } = await insist(person, 'GET', `/rooms/${roomId}/strokes?limit=500${cursor}`);
    items.push(...body.items);
    if (body.next === null) return items;
    cursor = `&cursor=${encodeURIComponent(body.next)}`;
  }
}

async function settled(person: Caller, { roomId }: RoomThere): Promise<void> {
  while ((await insist(person, 'GET', `/rooms/${roomId}/status`)).body.pending > 0);
}
