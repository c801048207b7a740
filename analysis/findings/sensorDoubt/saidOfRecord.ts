import type { Doubt } from '../../measures.ts';
import { CUT_OFF } from '../../stroke/doubts/doubts.ts';

/** What speaks against a record: what is doubted, and why, in a sentence. */
export interface SaidOfRecord {
  readonly doubt: Doubt;
  readonly detail: string;
  /** For a zero that is off: what was read at rest when that was first seen, amperes. */
  readonly restAmps?: number;
}

/** A stroke with an impossible date. Its samples are as good as any: no side is held back for it. */
export const MISDATED = {
  doubt: 'clock',
  detail: 'Its date lies ahead or before 2015: it is placed by when it arrived.',
} as const satisfies SaidOfRecord;

/** A clock that stands. The samples are as good as any. */
export const STOPPED = {
  doubt: 'clock',
  detail: 'It seems to stand still: one stroke after another is said to have begun at the very same moment.',
} as const satisfies SaidOfRecord;

/** A record that several strokes show to be cut off. */
export const CUT = { doubt: 'clipped', detail: CUT_OFF } as const satisfies SaidOfRecord;

/** A sensor that was turned round. */
export const TURNED = {
  doubt: 'reversed',
  detail:
    'It reads the other way round than it did, both ways: the clamp was put on the other way, or its wires were swapped.',
} as const satisfies SaidOfRecord;

/** A zero that moved by this many amperes. */
export function movedZero(amps: number): SaidOfRecord {
  const reads = `${Math.abs(amps).toFixed(1)} A`;
  return {
    doubt: 'offset',
    detail: `Its zero moved by ${reads}: whatever the current, it reads wrong by that much.`,
  };
}

/** A scale that changed by a factor, given as its natural logarithm. */
export function changedScale(scale: number): SaidOfRecord {
  const percent = Math.round(100 * Math.expm1(scale));
  const as = percent > 0 ? 'higher' : 'lower';
  return {
    doubt: 'scale',
    detail: `All its currents read ${Math.abs(percent)} % ${as} than they did, also where the motor stands.`,
  };
}

/** Sides whose scale changed by factors no further apart than this changed together, natural logarithm. */
const ONE_SCALE = 0.2;

/**
 * A scale that all sides share is the logger's: its range was switched, or its unit. `scales`: those of
 * `SensorChanges`; undefined: none shared.
 */
export function sharedScale(
  scales: ReadonlyMap<string, number>,
  sides: readonly string[],
): SaidOfRecord | undefined {
  const changes = [...scales.values()];
  const [least, most] = [Math.min(...changes), Math.max(...changes)];
  if (sides.length < 2 || changes.length < sides.length || most - least > ONE_SCALE) return undefined;
  return changedScale((least + most) / 2);
}

/** A wrongly stated rate, which stretches every stroke alike by a factor, given as its natural logarithm. */
export function wrongRate(rate: number): SaidOfRecord {
  const percent = Math.round(100 * Math.abs(Math.expm1(rate)));
  const as = rate > 0 ? 'more' : 'less';
  return {
    doubt: 'clock',
    detail: `Every stroke seems to take ${percent} % ${as} time than it did, at an unchanged current.`,
  };
}
