/** Rest voltage of a flooded 12 V lead-acid battery, and the share of its charge (0 to 1) that it speaks of. */
const REST_VOLTS: readonly (readonly [volts: number, charge: number])[] = [
  [11.89, 0],
  [12.06, 0.25],
  [12.24, 0.5],
  [12.45, 0.75],
  [12.65, 1],
];

/**
 * Share of its charge, 0 to 1, that a flooded 12 V lead-acid battery holds, by its voltage after hours of rest;
 * straight lines between the table's rows, 0 and 1 beyond them. NaN in answers NaN. Not for gel or AGM batteries,
 * and never for a voltage under load.
 *
 * Source: Battery Council International, open-circuit voltage and state of charge of flooded batteries.
 */
export function batteryCharge(restVolts: number): number {
  if (Number.isNaN(restVolts)) return Number.NaN;
  for (let i = 1; i < REST_VOLTS.length; i++) {
    const [below, lower] = REST_VOLTS[i - 1];
    const [above, higher] = REST_VOLTS[i];
    if (restVolts > above) continue;
    return Math.max(0, lower + ((restVolts - below) / (above - below)) * (higher - lower));
  }
  return 1;
}
