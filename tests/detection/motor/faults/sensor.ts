import type { SensorState } from '../../../../server/demo/simulator/condition.ts';
import {
  anySide,
  type FaultKind,
  type FaultSpan,
  namedSide,
  type PlannedFault,
  planFault,
  withAt,
} from '../../../../server/demo/simulator/faults/fault.ts';
import type { SimulatedRoom } from '../../../../server/demo/simulator/room.ts';

interface SensorFault extends FaultSpan {
  readonly sideIndex: number;
  readonly doubt: string;
  readonly severity: number;
  readonly change: (sensor: SensorState) => SensorState;
}

/** The record of one side is not to be trusted, whatever the room does. */
function sensorFault(room: SimulatedRoom, fault: SensorFault): PlannedFault {
  const label = {
    kind: 'sensor-doubt' as const,
    severity: fault.severity,
    side: namedSide(room, fault.sideIndex),
  };
  return planFault(`sensor-${fault.doubt}`, fault, label, (condition) => ({
    ...condition,
    sensors: withAt(condition.sensors, fault.sideIndex, fault.change),
  }));
}

/** The logger's clock stands still or jumps in mid-stroke. All sides share it, so no side is named. */
function clockFault(room: SimulatedRoom, fault: FaultSpan & { readonly slipS: number }): PlannedFault {
  const label = {
    kind: 'sensor-doubt' as const,
    severity: Math.abs(fault.slipS),
    side: namedSide(room, null),
  };
  return planFault('sensor-clock', fault, label, (condition) => ({
    ...condition,
    logger: { ...condition.logger, clockSlipS: fault.slipS },
  }));
}

type Draw = (room: SimulatedRoom, amount: number, sideIndex: number, sensor: SensorState) => SensorState;

function sensorKind(doubt: string, low: number, high: number, change: Draw): FaultKind {
  return {
    name: `sensor-${doubt}`,
    kind: 'sensor-doubt',
    leastSides: 1,
    draw: (room, random, onsetStroke) => {
      const sideIndex = anySide(room, random);
      const severity = random.uniform(low, high);
      return sensorFault(room, {
        onsetStroke,
        sideIndex,
        doubt,
        severity,
        change: (sensor) => change(room, severity, sideIndex, sensor),
      });
    },
  };
}

export const SENSOR_FAULTS: readonly FaultKind[] = [
  sensorKind('clipped', 0.85, 1.3, (room, times, side, sensor) => ({
    ...sensor,
    rangeAmps: room.runningAmps[side] * times,
  })),
  sensorKind('offset', 0.2, 0.6, (room, part, side, sensor) => ({
    ...sensor,
    offsetAmps: sensor.offsetAmps + Math.max(part * room.runningAmps[side], 1),
  })),
  sensorKind('scale', 0.55, 0.75, (_room, factor, _side, sensor) => ({
    ...sensor,
    scale: sensor.scale * factor,
  })),
  sensorKind('scale-up', 1.35, 1.8, (_room, factor, _side, sensor) => ({
    ...sensor,
    scale: sensor.scale * factor,
  })),
  sensorKind('gaps', 0.25, 0.5, (_room, part, _side, sensor) => ({
    ...sensor,
    gap: { from: 0.3, to: 0.3 + part },
    missed: 0.1,
  })),
  sensorKind('noise', 0.35, 0.8, (room, part, side, sensor) => ({
    ...sensor,
    noiseAmps: Math.max(part * room.runningAmps[side], 1.2),
  })),
  sensorKind('off', 1, 1, (_room, _amount, _side, sensor) => ({ ...sensor, off: true })),
  {
    name: 'sensor-clock',
    kind: 'sensor-doubt',
    leastSides: 1,
    draw: (room, random, onsetStroke) => {
      const strokeS = room.facts.travelMetres / room.load.speedMetresPerS;
      const slipS = strokeS * random.uniform(0.2, 0.4) * (random.chance(0.5) ? 1 : -1);
      return clockFault(room, { onsetStroke, slipS });
    },
  },
];
