/** What is said of a sensor whose zero is off, by what it reads at rest. */
export function offsetDetail(amps: number): string {
  return `At rest the sensor reads ${amps.toFixed(1)} A instead of nothing.`;
}
