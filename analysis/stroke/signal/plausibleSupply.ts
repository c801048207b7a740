import { median } from '../../statistics/median.ts';
import type { SupplyTrace } from '../../trace.ts';

/** A supply reading so far from nominal, parts of it, is in another unit or from another wire: as good as none. */
const LEAST_SUPPLY = 0.3;
const MOST_SUPPLY = 2.5;
/** A single reading further off than this, parts of nominal, is no supply's either. */
const MOST_EXTREME = 4;

/** The supply where it is one: null for none, and for a reading in another unit or of another wire. */
export function plausibleSupply(supply: SupplyTrace | null, nominalVolts: number): SupplyTrace | null {
  if (supply === null || supply.volts.length === 0) return null;
  const usual = median(supply.volts) / nominalVolts;
  const extreme = supply.volts.some((volts) => Math.abs(volts) > MOST_EXTREME * nominalVolts);
  return usual >= LEAST_SUPPLY && usual <= MOST_SUPPLY && !extreme ? supply : null;
}
