import type { ForcesFaultKind } from './fault.ts';
import { FRICTION_FAULTS } from './friction.ts';
import { RECORD_FAULTS } from './record.ts';
import { SPIKE_FAULTS } from './spikes.ts';
import { SUPPLY_FAULTS } from './supply.ts';
import { TRAVEL_FAULTS } from './travel.ts';

/** Every fault of this fleet: all ten kinds of warning. */
export const FORCES_FAULTS: readonly ForcesFaultKind[] = [
  ...FRICTION_FAULTS,
  ...SPIKE_FAULTS,
  ...TRAVEL_FAULTS,
  ...SUPPLY_FAULTS,
  ...RECORD_FAULTS,
];
