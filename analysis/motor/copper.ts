/** Temperature coefficient of the resistance of annealed copper at 20 °C, per °C. */
export const COPPER_PER_C = 0.00393;
/** Conductivity of annealed copper at 20 °C, metres per ohm and square millimetre. */
export const COPPER_CONDUCTIVITY = 58;

/** Change of a magnet's remanence, and so of a motor's constant, per °C from 20 °C: figures of a class of magnet. */
export const REMANENCE_PER_C = { ferrite: -0.002, neodymium: -0.001, samariumCobalt: -0.0003 } as const;

/**
 * Resistance of copper at a temperature, relative to that at `referenceC` (20 °C unless told).
 *
 * Source: IEC 60028 (1925), International Standard of Resistance for Copper: 0.393 % per °C at 20 °C.
 */
export function copperFactor(temperatureC: number, referenceC = 20, perCAt20 = COPPER_PER_C): number {
  return 1 + copperCoefficient(referenceC, perCAt20) * (temperatureC - referenceC);
}

/** Coefficient by which the line through 20 °C is described from another reference temperature. */
export function copperCoefficient(referenceC: number, perCAt20 = COPPER_PER_C): number {
  return 1 / (1 / perCAt20 + referenceC - 20);
}

/** Temperature of a copper winding from its resistance and that at 20 °C; NaN unless both are above 0. */
export function copperTemperatureC(ohms: number, ohmsAt20C: number): number {
  if (!(ohms > 0 && ohmsAt20C > 0)) return Number.NaN;
  return 20 + (ohms / ohmsAt20C - 1) / COPPER_PER_C;
}

/** A motor's constant at a temperature, relative to that at 20 °C. */
export function magnetFactor(temperatureC: number, perC: number = REMANENCE_PER_C.ferrite): number {
  return 1 + perC * (temperatureC - 20);
}
