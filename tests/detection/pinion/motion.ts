import type { Plant } from './plant.ts';

/** What outlives a stroke: where the room stands and how warm its motors are. */
export interface Rest {
  /** Metres out, by side. */
  readonly metres: number[];
  /** Above the air, by side. */
  readonly windingK: number[];
  readonly housingK: number[];
  atMs: number;
}

export function restAtStart(plant: Plant): Rest {
  const none = () => plant.sides.map(() => 0);
  return { metres: none(), windingK: none(), housingK: none(), atMs: 0 };
}

/** Lets the motors cool until `atMs`. */
export function coolUntil(rest: Rest, plant: Plant, atMs: number): void {
  const elapsedS = Math.max(0, (atMs - rest.atMs) / 1000);
  plant.sides.forEach(({ motor }, i) => {
    rest.housingK[i] *= Math.exp(-elapsedS / motor.housingS);
    rest.windingK[i] =
      rest.housingK[i] + (rest.windingK[i] - rest.housingK[i]) * Math.exp(-elapsedS / motor.windingS);
  });
  rest.atMs = atMs;
}

/** What really flowed in one stroke, at the logger's rate, positive extending. */
export interface Run {
  readonly amps: number[][];
  readonly volts: number[];
  readonly seconds: number;
}
