import type { Recipe } from '../fault.ts';
import { racksCarry } from './heavy.ts';
import { sideLost, stretchLost } from './losses.ts';
import { badMesh, brokenTooth, proudFastener } from './peaks.ts';
import { clipped, gaps, leftOff, noisy, scaleChanged, wrongClock, zeroJumped } from './readings.ts';
import { bindingZone, driedAtOnce, dryingUp, loadMoved, weakMagnets, wrongLubricant } from './rubbing.ts';
import { tiredSupply } from './supply.ts';
import { longerWay, slippingDrive, wornBrushes } from './timing.ts';
import { crankedHome, obstructed } from './travel.ts';

/** All that can go wrong, in the order of their turns. */
export const RECIPES: readonly Recipe[] = [
  driedAtOnce,
  proudFastener,
  sideLost,
  racksCarry,
  dryingUp,
  scaleChanged,
  brokenTooth,
  longerWay,
  obstructed,
  tiredSupply,
  bindingZone,
  zeroJumped,
  badMesh,
  wrongLubricant,
  stretchLost,
  clipped,
  weakMagnets,
  crankedHome,
  loadMoved,
  gaps,
  slippingDrive,
  noisy,
  wornBrushes,
  leftOff,
  wrongClock,
];
