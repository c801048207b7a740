import { eachOf, nameOf, planFault, type Recipe } from '../fault.ts';

/** Seconds that a side must be late to be seen beside its usual lag. */
function drawLateness(
  strokeS: number,
  rateHz: number,
  chance: (low: number, high: number) => number,
): number {
  const least = Math.max(0.7, 0.05 * strokeS, 6 / rateHz);
  return chance(least, Math.max(1.2 * least, Math.min(6, 0.2 * strokeS)));
}

/** A rack that has jumped on its bracket: one side has further to go to its stops, out and in. */
export const longerWay: Recipe = {
  name: 'longer way',
  needs: () => ({ sides: 2 }),
  draw({ room, onset, random }) {
    const at = random.integer(0, 1);
    const lateS = drawLateness(room.strokeS, Math.min(...room.logger.rateHz), (low, high) =>
      random.uniform(low, high),
    );
    return planFault(
      this.name,
      onset,
      { kind: 'late-side', side: nameOf(room, at), severity: lateS },
      (condition) =>
        eachOf(condition, at, (side) => {
          side.addedWayMetres += (lateS / room.strokeS) * room.travelMetres;
        }),
    );
  },
};

/** A clutch or a cable that slips under its load: the motor turns as ever, the side follows more slowly. */
export const slippingDrive: Recipe = {
  name: 'slipping drive',
  needs: () => ({ sides: 2, freeSides: true }),
  draw({ room, onset, random }) {
    const at = random.integer(0, 1);
    const lateS = drawLateness(room.strokeS, Math.min(...room.logger.rateHz), (low, high) =>
      random.uniform(low, high),
    );
    return planFault(
      this.name,
      onset,
      { kind: 'late-side', side: nameOf(room, at), severity: lateS, alsoFits: ['uneven-sides'] },
      (condition) =>
        eachOf(condition, at, (side) => {
          side.grip *= 1 / (1 + lateS / room.strokeS);
        }),
    );
  },
};

/** Worn brushes: one motor is slower under the same load, and its start and stall are weaker. */
export const wornBrushes: Recipe = {
  name: 'worn brushes',
  needs: () => ({ sides: 2, freeSides: true }),
  draw({ room, onset, random }) {
    const at = random.integer(0, 1);
    const { motor, runAmps } = room.sides[at];
    const late = Math.max(0.09, 1.2 / room.strokeS) + random.uniform(0, 0.12);
    const volts = 1.05 * room.facts.nominalVolts;
    const drop = (runAmps * motor.ohm) / volts;
    // Speed goes as volts less drop: what the drop must become for the side to be late by that part.
    const winding = (1 - (1 - drop) / (1 + late)) / drop;
    return planFault(
      this.name,
      onset,
      {
        kind: 'late-side',
        side: nameOf(room, at),
        severity: late * room.strokeS,
        alsoFits: ['uneven-sides'],
      },
      (condition) =>
        eachOf(condition, at, (side) => {
          side.winding *= winding;
        }),
    );
  },
};
