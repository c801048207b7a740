import { droppedMotor, droppedSide, droppedStretch } from './dropped.ts';
import type { FaultKind } from './fault.ts';
import { frictionDrift, frictionStep, sideDrift, sideStep, stretchFriction } from './friction.ts';
import { heavyFromNew } from './heavy.ts';
import { lateSide } from './late.ts';
import { rebound } from './rebound.ts';
import {
  clampOff,
  sensorClipped,
  sensorClock,
  sensorGaps,
  sensorNoise,
  sensorOffset,
  sensorScale,
} from './sensors.ts';
import { shortAgainst, shortCut } from './short.ts';
import { spikeAtPlace, spikeOncePerTurn, spikeScattered } from './spikes.ts';
import { flatBattery, poorWiring } from './supply.ts';
import { unevenShift } from './uneven.ts';

/** Every fault of this fleet; a faulty room bears one of those that fit it. */
export const FAULT_KINDS: readonly FaultKind[] = [
  frictionStep,
  frictionDrift,
  sideStep,
  sideDrift,
  stretchFriction,
  unevenShift,
  spikeAtPlace,
  spikeOncePerTurn,
  spikeScattered,
  droppedSide,
  droppedStretch,
  droppedMotor,
  lateSide,
  heavyFromNew,
  shortAgainst,
  shortCut,
  flatBattery,
  poorWiring,
  rebound,
  sensorScale,
  sensorOffset,
  sensorClipped,
  sensorGaps,
  sensorNoise,
  sensorClock,
  clampOff,
];
