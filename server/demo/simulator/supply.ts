/**
 * Rest voltage of a flooded 12 V lead-acid battery by state of charge, from empty to full in quarters
 * (Battery Council International, wet cell of 1.265 specific gravity at 26.7 °C).
 */
const REST_VOLTS = [11.89, 12.06, 12.24, 12.45, 12.65] as const;

/** Volts at rest for a state of charge of 0 to 1; straight lines between the table's rows. */
export function restVolts(stateOfCharge: number): number {
  const row = Math.min(Math.max(stateOfCharge, 0), 1) * (REST_VOLTS.length - 1);
  const below = Math.min(Math.floor(row), REST_VOLTS.length - 2);
  return REST_VOLTS[below] + (REST_VOLTS[below + 1] - REST_VOLTS[below]) * (row - below);
}

/** What feeds the room: a battery, with or without a shore converter beside it. */
export interface Supply {
  readonly batteryVolts: number;
  /** Battery and main cable. */
  readonly batteryOhms: number;
  /** The slow part of the sag, which builds up over `sagS`. */
  readonly sagOhms: number;
  readonly sagS: number;
  /** Fall of the rest voltage for each ampere-second drawn. */
  readonly voltsPerAmpSecond: number;
  readonly converter: { readonly volts: number; readonly ohms: number; readonly limitAmps: number } | null;
}

export function batterySupply(stateOfCharge: number, ohms: number, capacityAh: number): Supply {
  return {
    batteryVolts: restVolts(stateOfCharge),
    batteryOhms: ohms,
    sagOhms: ohms * 0.35,
    sagS: 6,
    voltsPerAmpSecond: 0.76 / (capacityAh * 3600),
    converter: null,
  };
}

/** A converter holds its voltage up to its limit; what is asked beyond comes from the battery. */
export function shoreSupply(battery: Supply, volts: number, limitAmps: number): Supply {
  return { ...battery, converter: { volts, ohms: 0.008, limitAmps } };
}

/** Volts at the controller's terminals. `sagAmps` is the current as the slow part of the sag has felt it. */
export function terminalVolts(supply: Supply, amps: number, sagAmps: number, drawnAs: number): number {
  const { converter } = supply;
  const rest = supply.batteryVolts - supply.voltsPerAmpSecond * drawnAs;
  if (!converter) return Math.max(rest - supply.batteryOhms * amps - supply.sagOhms * sagAmps, 0);
  const fromConverter = converter.volts - converter.ohms * amps;
  if (amps <= converter.limitAmps) return fromConverter;
  const fromBattery = rest - supply.batteryOhms * (amps - converter.limitAmps);
  return Math.max(Math.min(fromConverter, fromBattery), 0);
}
