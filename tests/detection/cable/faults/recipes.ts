import type { Recipe } from '../fault.ts';
import {
  drift,
  dryGuides,
  nowAndThen,
  oneWay,
  onlyCold,
  swollenFloor,
  unequallyDry,
  weakMagnets,
} from './rises.ts';
import { cutOff, gaps, leftOff, movedZero, noisyWire, otherScale, wrongClock } from './sensors.ts';
import { outOfSquare, shearedKey, slippingDrum, tiredMotor } from './shares.ts';
import { brokenTooth, flatPulley, frayedCable, grit, proudScrew } from './spikes.ts';
import {
  burntContact,
  curedAndBack,
  heavyFromNew,
  rebound,
  standsShort,
  stopsShort,
  tiredBattery,
} from './wholes.ts';

/** All that can go wrong here, in the order in which rooms take them by turns. */
export const RECIPES: readonly Recipe[] = [
  dryGuides,
  frayedCable,
  outOfSquare,
  drift,
  otherScale,
  stopsShort,
  flatPulley,
  nowAndThen,
  tiredMotor,
  tiredBattery,
  oneWay,
  shearedKey,
  movedZero,
  heavyFromNew,
  rebound,
  proudScrew,
  onlyCold,
  noisyWire,
  slippingDrum,
  swollenFloor,
  burntContact,
  grit,
  cutOff,
  weakMagnets,
  standsShort,
  gaps,
  brokenTooth,
  unequallyDry,
  leftOff,
  curedAndBack,
  wrongClock,
];
