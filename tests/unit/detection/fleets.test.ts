import { describe, expect, test } from 'vitest';
import { WARNING_KINDS } from '../../../analysis/warning.ts';
import { decodeStroke } from '../../../ingest/json/stroke.ts';
import { drawRooms, FLEET_NAMES, type FleetName, type FleetRoom } from '../../detection/fleets.ts';
import type { ToldEvent } from '../../detection/playFleet.ts';

const SEED = 5;
const STROKES = 90;
/** Enough to bear every fault, save where a room is tried out in many ways before it is taken. */
const ROOMS = 80;
const FEW: Readonly<Partial<Record<FleetName, number>>> = { cable: 12, beam: 12 };

const draw = (fleet: FleetName, seed = SEED) => drawRooms(fleet, seed, FEW[fleet] ?? ROOMS, STROKES);

/** What was told up to a stroke and with it. */
function toldUntil(events: Iterable<ToldEvent>, last: number): ToldEvent[] {
  const told: ToldEvent[] = [];
  for (const event of events) {
    if (event.type === 'stroke' && event.index > last) break;
    told.push(event);
  }
  return told;
}

const strokesOf = (told: readonly ToldEvent[]) =>
  told.flatMap((event) => (event.type === 'stroke' ? [event.stroke] : []));

/** The faulty rooms that are sound at first for the least number of strokes; work before a rebound is a part of it. */
function firstToFail(rooms: readonly FleetRoom[], count: number) {
  return rooms
    .flatMap(({ fault, events }) => (fault === null ? [] : [{ fault, events }]))
    .filter(({ fault }) => fault.startsStroke > 0 && fault.label.kind !== 'draw-rebound')
    .sort((one, other) => one.fault.startsStroke - other.fault.startsStroke)
    .slice(0, count);
}

describe.each(FLEET_NAMES)('the fleet %s', (fleet) => {
  const rooms = draw(fleet);

  test('has a fault in every second room, which shows once the room was learnt or from its first stroke on', () => {
    const faults = rooms.flatMap(({ fault }) => fault ?? []);
    expect(faults).toHaveLength(rooms.length / 2);
    for (const { startsStroke, label } of faults) {
      expect(startsStroke === 0).toBe(label.kind === 'heavy-room');
      if (startsStroke > 0) expect(startsStroke).toBeGreaterThanOrEqual(12);
    }
  });

  test('tells the same for a seed, and something else for another', () => {
    const first = ([{ room, events }]: readonly FleetRoom[]) =>
      JSON.stringify([room, toldUntil(events(), 2)]);
    const once = first(rooms);
    expect(first(drawRooms(fleet, SEED, 2, STROKES)) === once).toBe(true);
    expect(first(drawRooms(fleet, SEED + 1, 2, STROKES)) === once).toBe(false);
  });

  test.each(firstToFail(rooms, 2))(
    'leaves the strokes before $fault.name as they were, and changes those after',
    ({ fault: { startsStroke }, events }) => {
      const told = (hasFault: boolean) =>
        strokesOf(toldUntil(events(hasFault), startsStroke + 2)).map((stroke) => JSON.stringify(stroke));
      const sound = told(false);
      const firstChanged = told(true).findIndex((stroke, index) => stroke !== sound[index]);
      expect(firstChanged).toBeGreaterThanOrEqual(startsStroke);
    },
  );

  test('tells what a logger may send, in the order in which it happened, work on the room too', () => {
    let works = 0;
    let played = 0;
    // Work is a part of a rebound's story, and comes now and then elsewhere.
    const worked = ({ fault }: FleetRoom) => Number(fault?.label.kind === 'draw-rebound');
    for (const { events, fault } of rooms.toSorted((one, other) => worked(other) - worked(one))) {
      if (played >= 2 && works > 0) break;
      played++;
      const told = toldUntil(events(), Math.max(30, fault?.startsStroke ?? 0));
      for (const stroke of strokesOf(told)) {
        const sent = JSON.parse(
          JSON.stringify({ ...stroke, key: 'k', roomId: '01890a5d-ac96-774b-bcce-b302099a8057' }),
        );
        expect(decodeStroke(sent, '').startedAtMs).toBe(Date.parse(stroke.startedAt));
      }
      works += told.filter(({ type }) => type === 'service').length;
      const times = told.map((event) =>
        event.type === 'stroke' ? Date.parse(event.stroke.startedAt) : event.atMs,
      );
      expect(times.length).toBeGreaterThan(20);
      expect(times).toEqual(times.toSorted((a, b) => a - b));
    }
    expect(works).toBeGreaterThan(0);
  });
});

test.each(FLEET_NAMES.filter((fleet) => !(fleet in FEW)))(
  'the fleet %s has faults of every kind',
  (fleet) => {
    const kinds = draw(fleet).flatMap(({ fault }) => fault?.label.kind ?? []);
    expect(new Set(kinds)).toEqual(new Set(WARNING_KINDS));
  },
);
