import { COPPER_CONDUCTIVITY, copperFactor } from './copper.ts';

const MM_PER_INCH = 25.4;

/**
 * Diameter of a solid wire of an American gauge, in millimetres (0 is 1/0, -1 is 2/0 and so on).
 *
 * Source: ASTM B258, 0.005 inch x 92^((36 - gauge) / 39).
 */
export function wireDiameterMm(gauge: number): number {
  return 0.005 * 92 ** ((36 - gauge) / 39) * MM_PER_INCH;
}

/** Cross-section of a solid wire of an American gauge, in square millimetres. */
export function wireAreaMm2(gauge: number): number {
  return (Math.PI / 4) * wireDiameterMm(gauge) ** 2;
}

/** Resistance per metre of a solid copper wire of an American gauge, in ohms; stranded wire has 2 to 3 % more. */
export function wireOhmsPerMetre(gauge: number, temperatureC = 20): number {
  return copperFactor(temperatureC) / COPPER_CONDUCTIVITY / wireAreaMm2(gauge);
}

/** Voltage lost in both wires to a motor `oneWayMetres` away. RangeError for a negative length or resistance. */
export function voltageDrop(amps: number, ohmsPerMetre: number, oneWayMetres: number): number {
  if (!(ohmsPerMetre >= 0 && oneWayMetres >= 0)) {
    throw new RangeError(`resistance and length are at least 0, not ${ohmsPerMetre} and ${oneWayMetres}`);
  }
  return amps * ohmsPerMetre * 2 * oneWayMetres;
}
