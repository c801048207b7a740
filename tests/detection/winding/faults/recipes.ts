import type { FaultRecipe } from '../fault.ts';
import { liftedSide } from './balance.ts';
import { clampOff, clampTurned, clipped, gaps, movedZero, noisy, otherScale } from './clamps.ts';
import { leapingClock, wrongRate } from './clocks.ts';
import { drift, dryRails, dryShoe, rebound, seizedRoller } from './friction.ts';
import { brokenTooth, looseMesh, shearedPin, strippedGear, strippedRack } from './gears.ts';
import { heavyRated, heavyUnrated } from './heavy.ts';
import { corrodedPlug, dryGearbox, slippingClutch, weakMagnets } from './motors.ts';
import { bentRail, foldedSeal, proudFastener } from './places.ts';
import { corrodedFeed, tiredBattery } from './supply.ts';
import { boxBehind, hastyHand, jammed, movedLimit, raisedFloor } from './travel.ts';

/** In the order in which rooms get them: kinds mixed, so that a small fleet has most of them. */
export const FAULT_RECIPES: readonly FaultRecipe[] = [
  dryRails,
  liftedSide,
  proudFastener,
  shearedPin,
  slippingClutch,
  heavyRated,
  boxBehind,
  tiredBattery,
  rebound,
  clipped,
  drift,
  seizedRoller,
  brokenTooth,
  strippedRack,
  corrodedPlug,
  heavyUnrated,
  movedLimit,
  corrodedFeed,
  movedZero,
  otherScale,
  bentRail,
  looseMesh,
  strippedGear,
  hastyHand,
  gaps,
  weakMagnets,
  foldedSeal,
  raisedFloor,
  noisy,
  clampOff,
  dryShoe,
  dryGearbox,
  jammed,
  clampTurned,
  leapingClock,
  wrongRate,
];
