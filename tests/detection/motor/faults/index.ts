import { BUMP_FAULTS } from '../../../../server/demo/simulator/faults/bumps.ts';
import type { FaultKind } from '../../../../server/demo/simulator/faults/fault.ts';
import { FRICTION_FAULTS } from '../../../../server/demo/simulator/faults/friction.ts';
import { SHARE_FAULTS } from '../../../../server/demo/simulator/faults/share.ts';
import { TRAVEL_FAULTS } from '../../../../server/demo/simulator/faults/travel.ts';
import { REBOUND_FAULTS } from './rebound.ts';
import { SENSOR_FAULTS } from './sensor.ts';

/** Every fault that can befall a simulated room. */
export const FAULTS: readonly FaultKind[] = [
  ...FRICTION_FAULTS,
  ...SHARE_FAULTS,
  ...BUMP_FAULTS,
  ...TRAVEL_FAULTS,
  ...REBOUND_FAULTS,
  ...SENSOR_FAULTS,
];
