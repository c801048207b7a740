import * as draw from './draw.ts';
import type { FaultKind } from './fault.ts';
import * as sensors from './sensors.ts';
import * as sides from './sides.ts';
import * as spikes from './spikes.ts';
import * as wholeRoom from './wholeRoom.ts';

/** Every fault of the fleet, in the order in which its rooms get them. */
export const FAULT_KINDS: readonly FaultKind[] = [draw, spikes, sides, wholeRoom, sensors].flatMap((group) =>
  Object.values<FaultKind>(group),
);
