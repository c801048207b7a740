import { z } from 'zod';
import { SEVERITIES } from '../../analysis/warning.ts';
import { Time } from './common.ts';

const UNITS = ['metric', 'us'] as const;

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

/** A time of day, such as `22:00`. */
const Clock = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, { error: 'Must be a time of day such as 22:00.' });

/** What a person is told by mail. */
const told = {
  warningsFrom: z
    .enum(SEVERITIES)
    .nullable()
    .describe('The least severity of warnings that are told; null: none.'),
  cleared: z.boolean().describe('Also that such a warning has cleared.'),
  quiet: z
    .strictObject({ from: Clock, to: Clock })
    .refine(({ from, to }) => from !== to, {
      path: ['to'],
      message: 'Must be another time than its beginning.',
    })
    .nullable()
    .describe('Nothing is mailed from then to then, in the time zone of the settings; what comes up waits.'),
  digest: z.boolean().describe('A dealer’s week, on Mondays.'),
  silentAfterDays: z
    .int()
    .min(1)
    .max(365)
    .nullable()
    .describe('Loggers that were not heard for so long; null: none.'),
};

/** `paused`: since then nothing is mailed, as the mailbox was refused for good. */
export const NoticeSettings = z
  .object({
    ...told,
    email: z.string(),
    mails: z
      .boolean()
      .describe('Whether this installation has a mail server; without one nothing is mailed.'),
    paused: z.object({ since: Time, because: z.string() }).nullable(),
  })
  .meta({ id: 'NoticeSettings' });
export type NoticeSettings = z.infer<typeof NoticeSettings>;

export const NoticeSettingsPatch = z.strictObject(told).partial();
export type NoticeSettingsPatch = z.infer<typeof NoticeSettingsPatch>;

export const UnsubscribeParams = z.object({ token: z.string().min(1).max(200) });

/** When the caller last looked over the coaches on an earlier visit; null at the first. */
export const Look = z.object({ lastLookAt: Time.nullable() }).meta({ id: 'Look' });
export type Look = z.infer<typeof Look>;

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
