import type { Direction } from '../../../../analysis/trace.ts';
import type { SimulatedRoom } from '../room.ts';
import { batterySupply } from '../supply.ts';
import { type FaultKind, type FaultSpan, type PlannedFault, planFault } from './fault.ts';

interface ShortTravel extends FaultSpan {
  readonly direction: Direction;
  /** The part of the travel that is still made. */
  readonly reaches: number;
  /** Something stands in the way and the motor stalls there; else the controller switches off too early. */
  readonly blocked: boolean;
}

/** Strokes of one direction end before the room's usual travel. */
function shortTravel(fault: ShortTravel): PlannedFault {
  const label = { kind: 'short-travel' as const, severity: 1 - fault.reaches, direction: fault.direction };
  const position = fault.direction === 'extend' ? fault.reaches : 1 - fault.reaches;
  return planFault('short-travel', fault, label, (condition) => {
    if (condition.direction !== fault.direction) return condition;
    return fault.blocked
      ? { ...condition, stopPosition: position, releasePosition: null }
      : { ...condition, releasePosition: position };
  });
}

interface WeakSupply extends FaultSpan {
  /** Mean volts while running that the battery can still hold. */
  readonly runningVolts: number;
}

/** A battery at its end: its resistance has grown and it sags under the room. */
export function weakSupply(room: SimulatedRoom, fault: WeakSupply): PlannedFault {
  const label = { kind: 'weak-supply' as const, severity: 12 - fault.runningVolts };
  const ohms = room.battery.ohms * 2;
  const worn = batterySupply(0.1, ohms, room.battery.capacityAh / 3);
  const amps = room.runningAmps.reduce((sum, value) => sum + value, 0);
  const batteryVolts = fault.runningVolts + amps * (worn.batteryOhms + worn.sagOhms);
  return planFault('weak-supply', fault, label, (condition) => ({
    ...condition,
    supply: { ...worn, batteryVolts },
  }));
}

export const TRAVEL_FAULTS: readonly FaultKind[] = [
  {
    name: 'short-travel',
    kind: 'short-travel',
    leastSides: 1,
    draw: (_room, random, onsetStroke) =>
      shortTravel({
        onsetStroke,
        direction: random.pick(['extend', 'retract']),
        reaches: random.uniform(0.75, 0.92),
        blocked: random.chance(0.5),
      }),
  },
  {
    name: 'weak-supply',
    kind: 'weak-supply',
    leastSides: 1,
    draw: (room, random, onsetStroke) =>
      weakSupply(room, { onsetStroke, runningVolts: random.uniform(9, 10.2) }),
  },
];
