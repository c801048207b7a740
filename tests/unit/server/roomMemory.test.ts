import { expect, test } from 'vitest';
import { beginRoom } from '../../../analysis/room/fold.ts';
import type { RoomDescription } from '../../../analysis/trace.ts';
import { RoomMemory } from '../../../server/work/remembered/roomMemory.ts';

const ROOM: RoomDescription = {
  sides: ['main'],
  drive: 'in-wall',
  nominalVolts: 12,
  travelMetres: null,
  gearTeeth: null,
  rackPitchMm: null,
  ratedAmps: null,
  positiveDirection: 'extend',
};

/** What was found of a room at a time, all of it kept in a checkpoint. */
const foundAt = (at: Date) => ({
  from: null,
  checkpoints: [{ at, events: 1 }],
  state: beginRoom('room', ROOM, []),
  end: { at, events: 1 },
});

test('of more than 64 rooms those gone through longest ago are forgotten', () => {
  const memory = new RoomMemory();
  const names = Array.from({ length: 66 }, (_, n) => `room ${n}`);
  for (const name of names) memory.keep(name, foundAt(new Date(0)), '1');
  expect(names.filter((name) => memory.look(name) === null)).toEqual(['room 0', 'room 1']);
});

test('a state is given away once, and what was found without events is not remembered', () => {
  const memory = new RoomMemory();
  memory.keep('room', foundAt(new Date(7)), '1');
  expect(memory.take('room')).toMatchObject({ at: new Date(7), events: 1, isRemembered: true });
  expect(memory.take('room')).toBeNull();
  memory.keep('room', { ...foundAt(new Date(7)), end: null }, '1');
  expect(memory.look('room')).toBeNull();
});
