import { mean } from 'simple-statistics';
import { isStandstillRead, standstillAmps } from '../../motor/turns.ts';
import type { FindingContext } from '../finding.ts';

/** A charger lifts its battery from 12.2 V to 14.4 V. */
export const MOST_STRONGER = 14.4 / 12.2;
/** No motor runs at more of what it draws at standstill than this: a guess, no source. */
const MOST_OF_STANDSTILL = 0.4;
/** Where that is not read, what it runs at is taken for so much of it: a guess, no source. */
export const UNREAD_OF_STANDSTILL = 0.25;

/**
 * By how much quicker a room is on a supply that is `stronger`, both natural logarithms: speed is (V - I R) / Ke, so that it
 * grows by more than the volts do, and by the more the harder the motor works. I R is the part of V that the running current is
 * of the current at standstill.
 */
export function quickerBy({ state, analysis }: FindingContext, stronger: number): number {
  const parts = state.room.sides.flatMap((side) => {
    const measured = analysis.sides[side];
    if (measured === undefined) return [];
    return [
      isStandstillRead(measured) ? measured.runningAmps / standstillAmps(measured) : UNREAD_OF_STANDSTILL,
    ];
  });
  const lost = Math.min(MOST_OF_STANDSTILL, Math.max(0, ...parts));
  return Math.log((1 - lost) / (Math.exp(-stronger) - lost));
}

/**
 * By how much quicker a room is on the supply that its motors' starts show, natural logarithm: a motor that does not turn yet
 * draws V / R, whatever ends its way. 0 where that is recorded, and where they are no higher than ever.
 */
export function quickerByStart(context: FindingContext): number {
  const { state, analysis, residual } = context;
  const rises = state.room.sides
    .map((side) => residual(side, 'inrushAmps')?.rise ?? null)
    .filter((rise) => rise !== null);
  if (analysis.supplyVolts !== null || rises.length === 0) return 0;
  return quickerBy(context, Math.min(Math.max(0, mean(rises)), Math.log(MOST_STRONGER)));
}
