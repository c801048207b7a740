/** Temperature coefficient of annealed copper at 20 °C, per K (IEC 60028, 1925). */
export const COPPER_PER_K = 0.00393;

/** Resistance at a temperature over that at 20 °C. */
export function copperFactor(temperatureC: number): number {
  return 1 + COPPER_PER_K * (temperatureC - 20);
}
