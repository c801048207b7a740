import { BUMP_FAULTS } from './bumps.ts';
import type { FaultKind } from './fault.ts';
import { FRICTION_FAULTS } from './friction.ts';
import { REBOUND_FAULTS } from './rebound.ts';
import { SENSOR_FAULTS } from './sensor.ts';
import { SHARE_FAULTS } from './share.ts';
import { TRAVEL_FAULTS } from './travel.ts';

/** Every fault that can befall a simulated room. */
export const FAULTS: readonly FaultKind[] = [
  ...FRICTION_FAULTS,
  ...SHARE_FAULTS,
  ...BUMP_FAULTS,
  ...TRAVEL_FAULTS,
  ...REBOUND_FAULTS,
  ...SENSOR_FAULTS,
];
