import { words } from './words.ts';

/** Numbers and times in the reader's own language and zone. */
const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
const whenFormat = new Intl.DateTimeFormat(undefined, {
  dateStyle: 'medium',
  timeStyle: 'short',
  timeZone: zone,
});
const dayFormat = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeZone: zone });
const agoFormat = new Intl.RelativeTimeFormat(undefined, { numeric: 'auto' });
const percentFormat = new Intl.NumberFormat(undefined, { style: 'percent', maximumFractionDigits: 0 });
const finePercentFormat = new Intl.NumberFormat(undefined, { style: 'percent', maximumFractionDigits: 1 });

export const whenText = (at: string | number): string => whenFormat.format(new Date(at));
export const dayText = (at: string | number): string => dayFormat.format(new Date(at));
export const finePercent = (part: number): string => finePercentFormat.format(part);
export const percent = (part: number): string => percentFormat.format(part);

/** "3 hours ago", in the largest unit that gives at least one. */
export function agoText(at: string, nowMs = Date.now()): string {
  const seconds = (Date.parse(at) - nowMs) / 1000;
  const steps: [Intl.RelativeTimeFormatUnit, number][] = [
    ['year', 31_557_600],
    ['month', 2_629_800],
    ['day', 86_400],
    ['hour', 3_600],
    ['minute', 60],
  ];
  for (const [unit, size] of steps) {
    if (Math.abs(seconds) >= size) return agoFormat.format(Math.round(seconds / size), unit);
  }
  return agoFormat.format(0, 'minute');
}

/** Enough digits to tell two strokes apart, no more: 0.42, 9.1, 143. */
export function plainNumber(value: number): string {
  const size = Math.abs(value);
  const digits = size >= 100 ? 0 : size >= 1 ? 1 : 2;
  return new Intl.NumberFormat(undefined, {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  }).format(value);
}

const twoDigits = new Intl.NumberFormat(undefined, { maximumSignificantDigits: 2 });
/** Two significant digits, for what is itself uncertain. */
export const roughly = (value: number): string => twoDigits.format(value);

/** A measured value with its unit; a unit of `1` is a proportion. */
export function quantity(value: number | null | undefined, unit: string): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return words.none;
  if (unit === '1') return finePercent(value);
  return `${plainNumber(value)}\u00a0${unit}`;
}

/** A place on the travel: per cent from fully in, and centimetres where the travel is known. */
export function placeText(position: number, travelMetres: number | null): string {
  const part = percent(position);
  if (travelMetres === null) return part;
  const centimetres = new Intl.NumberFormat(undefined, {
    style: 'unit',
    unit: 'centimeter',
    maximumFractionDigits: 0,
  }).format(position * travelMetres * 100);
  return `${part} (${centimetres})`;
}

/** A moment as a `datetime-local` field wants it, in the reader's zone. */
export function localFieldTime(at: Date): string {
  const shifted = new Date(at.getTime() - at.getTimezoneOffset() * 60_000);
  return shifted.toISOString().slice(0, 16);
}
