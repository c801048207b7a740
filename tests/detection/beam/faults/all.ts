import type { FaultKind } from '../story.ts';
import { DRAW_REBOUND } from './drawRebound.ts';
import { DROPPED_LOAD } from './droppedLoad.ts';
import { HEAVY_ROOM } from './heavyRoom.ts';
import { LATE_SIDE } from './lateSide.ts';
import { RISING_DRAW } from './risingDraw.ts';
import { SENSOR_DOUBT } from './sensorDoubt.ts';
import { SHORT_TRAVEL } from './shortTravel.ts';
import { STALL_SPIKE } from './stallSpike.ts';
import { UNEVEN_SIDES } from './unevenSides.ts';
import { WEAK_SUPPLY } from './weakSupply.ts';

/** Every fault of the fleet. */
export const FAULT_KINDS: readonly FaultKind[] = [
  ...RISING_DRAW,
  ...UNEVEN_SIDES,
  ...STALL_SPIKE,
  ...DROPPED_LOAD,
  ...LATE_SIDE,
  ...HEAVY_ROOM,
  ...SHORT_TRAVEL,
  ...WEAK_SUPPLY,
  ...DRAW_REBOUND,
  ...SENSOR_DOUBT,
];
