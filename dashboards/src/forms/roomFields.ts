import type { Room } from '../api/types.ts';
import { plainCount } from '../format.ts';
import { theReader } from '../reader.ts';
import { words } from '../words.ts';
import { fieldOf, isWithin, metresField, typedMetres, typedNumber } from './numbers.ts';

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

const MOST_METRES = 10;
const MOST_SIDES = 8;
const LONGEST_SIDE = 60;
/** Stands for more than nothing where zero itself is not taken. */
const NOT_ZERO = Number.MIN_VALUE;

/** What is wrong before it is sent, by field, in the reader's own unit; what the service takes is in its schema of rooms. */
export function problemsOfRoom(typed: RoomFields): Record<keyof RoomFields, string | null> {
  const say = words.forms;
  const number = (text: string, wrong: string, ...limits: Limits) => {
    const value = typedNumber(text);
    return value === null || isWithin(value, ...limits) ? null : wrong;
  };
  const metres = typedMetres(typed.travel);
  return {
    name: typed.name.trim() === '' ? say.nameMissing : null,
    drive: null,
    sides: problemOfSides(sidesOf(typed.sides)),
    travel: metres === null || isWithin(metres, NOT_ZERO, MOST_METRES) ? null : travelWrong(),
    ratedAmps: number(typed.ratedAmps, say.ratedAmpsWrong, NOT_ZERO, 1000),
    gearTeeth: number(typed.gearTeeth, say.gearTeethWrong, 4, 200, 'whole'),
    rackPitchMm: number(typed.rackPitchMm, say.rackPitchWrong, NOT_ZERO, 100),
    nominalVolts: number(typed.nominalVolts, say.nominalVoltsWrong, 5, 60),
  };
}

type Limits = [least: number, most: number, whole?: 'whole'];

function travelWrong(): string {
  const say = words.forms;
  const most = plainCount(Math.floor(Number(metresField(MOST_METRES))));
  return theReader().us ? say.travelInchesWrong(most) : say.travelCentimetresWrong(most);
}

function problemOfSides(sides: readonly string[]): string | null {
  const say = words.forms;
  if (sides.length === 0) return say.sidesMissing;
  if (sides.length > MOST_SIDES) return say.sidesMany(MOST_SIDES);
  if (new Set(sides).size < sides.length) return say.sidesTwice;
  return sides.some((side) => side.length > LONGEST_SIDE) ? say.sidesLong(LONGEST_SIDE) : null;
}
