import { z } from 'zod';
import { Time } from './common.ts';

export const UNITS = ['metric', 'us'] as const;

/** By its IANA name, such as `America/Denver`. */
const TimeZone = z
  .string()
  .min(1)
  .max(60)
  .refine(isTimeZone, { message: 'There is no such time zone. An example is America/Denver.' });

/** A BCP 47 language tag, such as `en-US`. */
const Locale = z
  .string()
  .min(1)
  .max(60)
  .refine(isLocale, { message: 'This is no language tag. An example is en-US.' });

/** How a person wants things shown; null follows the device. */
export const Settings = z
  .object({
    units: z.enum(UNITS).nullable(),
    timeZone: TimeZone.nullable(),
    locale: Locale.nullable(),
  })
  .meta({ id: 'Settings' });
export type Settings = z.infer<typeof Settings>;

export const SettingsPatch = z.strictObject(Settings.shape).partial();
export type SettingsPatch = z.infer<typeof SettingsPatch>;

/** When the caller last looked over the coaches on an earlier visit; null at the first. */
export const Look = z.object({ lastLookAt: Time.nullable() }).meta({ id: 'Look' });

function isTimeZone(name: string): boolean {
  return /^[A-Za-z]/.test(name) && isKnown(() => new Intl.DateTimeFormat('en', { timeZone: name }));
}

function isLocale(tag: string): boolean {
  return isKnown(() => Intl.getCanonicalLocales(tag));
}

/** `Intl` has no other way to ask: it throws a RangeError for what it does not know. */
function isKnown(use: () => unknown): boolean {
  try {
    use();
    return true;
  } catch {
    return false;
  }
}
