import type { Room } from './api/types.ts';
import { forEachReader, theReader } from './reader.ts';
import { words } from './words.ts';

/** Numbers and times in the reader's own language, zone and units. */
let whenFormat: Intl.DateTimeFormat;
let dayFormat: Intl.DateTimeFormat;
/** Words, which stand within sentences of the page: in its language, whatever numbers and dates are written in. */
const agoFormat = new Intl.RelativeTimeFormat(words.language);
let percentFormat: Intl.NumberFormat;
let finePercentFormat: Intl.NumberFormat;
let signedPercentFormat: Intl.NumberFormat;
forEachReader(({ locale, timeZone }) => {
  whenFormat = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short', timeZone });
  dayFormat = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone });
  percentFormat = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 0 });
  finePercentFormat = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 1 });
  signedPercentFormat = new Intl.NumberFormat(locale, { style: 'percent', signDisplay: 'exceptZero' });
});

/** Empty where the reader's zone is unknown: another's would mislead. */
const written = (format: Intl.DateTimeFormat, at: string | number): string =>
  theReader().zoneKnown ? format.format(new Date(at)) : '';
export const whenText = (at: string | number): string => written(whenFormat, at);
export const dayText = (at: string | number): string => written(dayFormat, at);
export const finePercent = (part: number): string => finePercentFormat.format(part);
export const percent = (part: number): string => percentFormat.format(part);
export const signedPercent = (part: number): string => signedPercentFormat.format(part);

/** A number as the service writes it into a sentence, with its unit. */
const TOLD = /(\d{1,6})(\.\d{1,3})? (%|°C|[AVs]\b)/g;

/** A sentence of the service, its numbers written as this reader writes them, and none parted from its unit. */
export const toldHere = (sentence: string): string =>
  sentence.replace(TOLD, (_, whole: string, part: string | undefined, unit: string) => {
    const value = Number(whole + (part ?? ''));
    if (unit === '%') return percent(value / 100);
    if (unit === '°C') return temperatureText(value);
    return `${withDecimals(value, part === undefined ? 0 : part.length - 1)}\u00a0${unit}`;
  });

/** "3 hours ago", in the largest unit that gives at least one. */
export function agoText(at: string | number, nowMs = Date.now()): string {
  const seconds = (new Date(at).getTime() - nowMs) / 1000;
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
  return words.justNow;
}

/** Enough digits to tell two strokes apart, no more: 0.42, 9.1, 143. */
export function plainNumber(value: number): string {
  const size = Math.abs(value);
  return withDecimals(value, size >= 100 ? 0 : size >= 1 ? 1 : 2);
}

/** A part as per cent with so many decimals. */
export function percentOf(part: number, decimals: number): string {
  return new Intl.NumberFormat(theReader().locale, {
    style: 'percent',
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  }).format(part);
}

export function withDecimals(value: number, decimals: number): string {
  return new Intl.NumberFormat(theReader().locale, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  }).format(value);
}

/** A number of things, rounded to whole ones. */
export function plainCount(count: number): string {
  return new Intl.NumberFormat(theReader().locale, { maximumFractionDigits: 0 }).format(count);
}

const INCHES_PER_METRE = 1 / 0.0254;
const fahrenheit = (celsius: number): number => 32 + 1.8 * celsius;

/** A measured value with its unit; a unit of `1` is a proportion. Lengths and temperatures in the reader's units. */
export function quantity(value: number | null | undefined, unit: string): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return words.none;
  if (unit === '1') return finePercent(value);
  if (theReader().us && unit === 'm') return `${plainNumber(value * INCHES_PER_METRE)}\u00a0in`;
  if (theReader().us && unit === '°C') return `${plainNumber(fahrenheit(value))}\u00a0°F`;
  return `${plainNumber(value)}\u00a0${unit}`;
}

/** A temperature without needless digits, such as the one to which values are brought. */
export const temperatureText = (celsius: number): string =>
  theReader().us ? `${Math.round(fahrenheit(celsius))}\u00a0°F` : `${Math.round(celsius)}\u00a0°C`;

const REFERENCE = { partOfNominal: 1.05, ambientC: 20 };

/** The supply and the temperature that the service brings values to. */
export const referenceText = ({ nominalVolts }: Pick<Room, 'nominalVolts'>): string =>
  words.reference(quantity(REFERENCE.partOfNominal * nominalVolts, 'V'), temperatureText(REFERENCE.ambientC));

/** A place on the travel: per cent from fully in, and centimetres or inches where the travel is known. */
export function placeText(position: number, travelMetres: number | null): string {
  const part = percent(position);
  return travelMetres === null ? part : `${part} (${lengthText(position * travelMetres)})`;
}

/** A length along a travel, in centimetres or inches, and not parted from its unit. */
export function lengthText(metres: number): string {
  const { locale, us } = theReader();
  const text = new Intl.NumberFormat(locale, {
    style: 'unit',
    unit: us ? 'inch' : 'centimeter',
    maximumFractionDigits: us ? 1 : 0,
  }).format(us ? metres * INCHES_PER_METRE : metres * 100);
  return text.replace(/ /g, '\u00a0');
}
