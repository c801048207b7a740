/** The page of settings. */
export const settingsWords = {
  title: 'Settings',
  lead: 'How things are shown to you, on every device.',
  follow: 'As the device says',
  units: 'Units',
  metric: 'Centimetres and °C',
  us: 'Inches and °F',
  locale: 'Numbers and dates as in',
  timeZone: 'Time zone',
  timeZoneHint: 'Such as America/Denver. Leave it empty to follow the device.',
  saving: 'Saving…',
  saved: 'Saved.',
  sample: 'This is how it looks',
} as const;
