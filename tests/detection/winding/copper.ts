/** Copper's resistance rises by 0.393 % of that at 20 °C for each kelvin (IEC 60028). */
const COPPER_PER_KELVIN = 0.00393;

/** A winding's resistance when it is as warm as told. */
export function copperOhms(ohmsAt20C: number, windingC: number): number {
  return ohmsAt20C * (1 + COPPER_PER_KELVIN * (windingC - 20));
}
