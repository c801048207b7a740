import type { Room } from '../api/types.ts';
import { words } from '../words.ts';
import { fieldOf, metresField, typedMetres, typedNumber } from './numbers.ts';

/** A room as its form holds it: texts, lengths in the reader's unit. */
export interface RoomFields {
  readonly name: string;
  readonly drive: Room['drive'];
  /** Names separated by commas, in the order of the sides. */
  readonly sides: string;
  readonly travel: string;
  readonly ratedAmps: string;
  readonly gearTeeth: string;
  readonly rackPitchMm: string;
  readonly nominalVolts: string;
}

/** Two motors in the wall have a side each; every other drive has one motor as a rule. */
export const usualSides = (drive: Room['drive']): string => (drive === 'in-wall' ? 'front, rear' : 'main');

export const blankRoom: RoomFields = {
  name: '',
  drive: 'in-wall',
  sides: usualSides('in-wall'),
  travel: '',
  ratedAmps: '',
  gearTeeth: '',
  rackPitchMm: '',
  nominalVolts: '12',
};

export const fieldsOfRoom = (room: Room): RoomFields => ({
  name: room.name,
  drive: room.drive,
  sides: room.sides.join(', '),
  travel: metresField(room.travelMetres),
  ratedAmps: fieldOf(room.ratedAmps),
  gearTeeth: fieldOf(room.gearTeeth),
  rackPitchMm: fieldOf(room.rackPitchMm),
  nominalVolts: fieldOf(room.nominalVolts),
});

const sidesOf = (text: string): string[] =>
  text
    .split(',')
    .map((side) => side.trim())
    .filter((side) => side !== '');

/** What the API takes. `before` keeps the travel as it was where its field says the same. */
export function bodyOfRoom(typed: RoomFields, before: Room | null) {
  const travelStays = before !== null && metresField(before.travelMetres) === typed.travel;
  return {
    name: typed.name.trim(),
    drive: typed.drive,
    sides: sidesOf(typed.sides),
    travelMetres: travelStays ? before.travelMetres : typedMetres(typed.travel),
    ratedAmps: typedNumber(typed.ratedAmps),
    gearTeeth: typedNumber(typed.gearTeeth),
    rackPitchMm: typedNumber(typed.rackPitchMm),
    nominalVolts: typedNumber(typed.nominalVolts) ?? 12,
  };
}

const NUMBERS = ['travel', 'ratedAmps', 'gearTeeth', 'rackPitchMm', 'nominalVolts'] as const;

/** What is wrong before it is sent, by field. */
export function problemsOfRoom(typed: RoomFields): Partial<Record<keyof RoomFields, string>> {
  const say = words.forms;
  const found: Partial<Record<keyof RoomFields, string>> = {};
  if (typed.name.trim() === '') found.name = say.nameMissing;
  if (sidesOf(typed.sides).length === 0) found.sides = say.sidesMissing;
  for (const name of NUMBERS) if (Number.isNaN(typedNumber(typed[name]))) found[name] = say.noNumber;
  return found;
}
