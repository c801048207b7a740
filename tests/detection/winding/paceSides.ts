import type { Controller } from './room.ts';
import type { Side } from './side.ts';

/** The least that a controller slows the side ahead to. */
const LEAST_DUTY = 0.5;
/** A paused side goes on when its lead has shrunk to this part of what paused it. */
const CAUGHT_UP_PART = 0.2;

/** Sets what each motor gets of the supply: `allowed` less what keeps the two in step by the turns of their gears. */
export function paceSides(sides: readonly Side[], controller: Controller, allowed: number): void {
  for (const side of sides) side.duty = side.isCut ? 0 : allowed;
  if (controller.pacing === 'none' || allowed === 0 || sides.length < 2) return;
  const [first, second] = sides;
  if (first.isCut || second.isCut) return;
  const lead = first.gearMetres - second.gearMetres;
  const ahead = lead > 0 ? first : second;
  const behind = lead > 0 ? second : first;
  if (controller.pacing === 'pwm') {
    ahead.duty *= Math.max(LEAST_DUTY, 1 - (0.5 * Math.abs(lead)) / controller.leadMetres);
    return;
  }
  behind.isPaced = false;
  if (Math.abs(lead) >= controller.leadMetres && !ahead.isPaced) {
    ahead.isPaced = true;
    ahead.rest();
  }
  if (Math.abs(lead) < CAUGHT_UP_PART * controller.leadMetres) ahead.isPaced = false;
  if (ahead.isPaced) ahead.duty = 0;
}
