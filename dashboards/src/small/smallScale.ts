import { tickNumber } from '../charts/drawn/tickNumber.ts';
import { percent, signedPercent } from '../format.ts';
import { roundScale, type Scale } from './roundScale.ts';

/** What stands beside a small picture: its highest, its middle and its lowest value. */
export interface SmallScale extends Scale {
  readonly tell: (value: number) => string;
}

/** How far off its normal a picture reaches, as parts of it: the least of these that holds all. */
const REACHES = [0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.75, 1];

/** Of values as parts of their normal, which stands in the middle unless something is more than twice as high. */
export function scaleOfParts(values: readonly number[], normal: string): SmallScale {
  const tell = (value: number) => (Math.abs(value - 1) < 1e-9 ? normal : signedPercent(value - 1));
  const furthest = Math.max(0, ...values.map((value) => Math.abs(value - 1)));
  const reach = REACHES.find((each) => each >= furthest);
  if (reach !== undefined) return { bottom: 1 - reach, top: 1 + reach, tell };
  return { ...roundScale(0, Math.max(...values)), tell };
}

/** Of values in a unit; a unit of `1` is a proportion. */
export function scaleOf(values: readonly number[], unit: string): SmallScale {
  const tell = (value: number) => (unit === '1' ? percent(value) : `${tickNumber(value)}\u00a0${unit}`);
  return { ...roundScale(Math.min(...values), Math.max(...values)), tell };
}
