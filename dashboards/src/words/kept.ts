/** How long the recordings of an account are kept. */
export const keptWords = {
  title: 'How long recordings are kept',
  lead: 'For all coaches of your account. A recording is every sample of a stroke. What was measured of it, its curve along the travel, warnings and work are kept for ever.',
  about: 'When old recordings are removed, and what was.',
  keep: 'Keep recordings',
  forEver: 'For ever',
  months: (n: number) =>
    n === 1 ? '1 month' : n % 12 !== 0 ? `${n} months` : n === 12 ? '1 year' : `${n / 12} years`,
  means: (span: string) =>
    `Recordings that came in more than ${span} ago are removed tonight, and all others once they are that old. Nobody can bring them back. Their strokes can then no longer be seen over time, saved as CSV or worked out again.`,
  meansNothing: 'Nothing is removed.',
  remove: 'Remove what is older',
  keepAll: 'Keep them for ever',
  keepLonger: 'Keep them that long',
  saving: 'Saving…',
  saved: 'Saved.',
  runs: 'What was removed',
  noRuns: 'Nothing has been removed yet.',
  when: 'When',
  older: 'Older than',
  recordings: 'Recordings',
  size: 'Size',
  megabytes: (n: string) => `${n}\u00a0MB`,
} as const;
