import type { Settings } from './api/types.ts';

/** The reader's language, zone and units: what the person set, else what the device says. */
export interface Reader {
  readonly locale: string | undefined;
  readonly timeZone: string | undefined;
  /** Whether that is the reader's own: where nobody knows, no time of day is written. */
  readonly zoneKnown: boolean;
  /** Inches and degrees Fahrenheit. */
  readonly us: boolean;
}

/** What a person's device goes by, where it is known. */
export interface Device {
  readonly language: string | undefined;
  readonly knowsZone: boolean;
}

/** The one that this runs on. */
export const THIS_DEVICE: Device = { language: undefined, knowsZone: true };
let device = THIS_DEVICE;

/** Follows the device in everything. */
export const DEVICE: Settings = { units: null, timeZone: null, locale: null };

/** Regions (ISO 3166) whose people read inches and degrees Fahrenheit. */
const US_REGIONS = new Set(['US', 'LR', 'MM']);

let reader = readerOf(DEVICE);
const listeners: ((reader: Reader) => void)[] = [];

export const theReader = (): Reader => reader;

/** From here on pages are for somebody at this device. */
export function readOn(which: Device): void {
  device = which;
}

/** Called at once and whenever the reader changes: for formats, which are costly to make. */
export function forEachReader(make: (reader: Reader) => void): void {
  listeners.push(make);
  make(reader);
}

/** From here on every format writes for this person. */
export function readAs(settings: Settings): void {
  reader = readerOf(settings);
  for (const make of listeners) make(reader);
}

function readerOf({ units, timeZone, locale: own }: Settings): Reader {
  const locale = own ?? device.language;
  const language = ifKnown(() => new Intl.DateTimeFormat(locale).resolvedOptions().locale);
  const zone = ifKnown(
    () => new Intl.DateTimeFormat('en', { timeZone: timeZone ?? undefined }).resolvedOptions().timeZone,
  );
  const region =
    new Intl.Locale(language === undefined ? 'en' : (locale ?? language)).maximize().region ?? '';
  return {
    locale: language,
    timeZone: zone,
    zoneKnown: timeZone !== null || device.knowsZone,
    us: units === null ? US_REGIONS.has(region) : units === 'us',
  };
}

/** A name that the service knows and this browser does not is taken for not set. */
function ifKnown(ask: () => string): string | undefined {
  try {
    return ask();
  } catch {
    return undefined;
  }
}
