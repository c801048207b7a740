/** How many is not told to whoever sees the room by a grant. */
function lenders(rooms: number | null, unknown: string): string {
  if (rooms === null) return unknown;
  return rooms === 1 ? '1 room' : `${rooms} rooms`;
}

/** The page of a room. */
export const roomWords = {
  verdicts: {
    learning: { word: 'Learning', means: 'Too few strokes yet to know what is normal for this room.' },
    clear: { word: 'Clear', means: 'Nothing to do for now. It is checked again after every stroke.' },
    watch: { word: 'Watch', means: 'Something needs watching. It can wait; keep an eye on it.' },
    service: { word: 'Needs work', means: 'Have it looked at before the next trip.' },
    stop: { word: 'Stop', means: 'Leave this room where it is until it has been looked at.' },
    unknown: { word: 'No answer', means: 'There is not enough to go by.' },
  },

  room: {
    pending: (n: number) =>
      n === 1 ? '1 stroke is still being worked out.' : `${n} strokes are still being worked out.`,
    counted: (n: number) => (n === 0 ? 'No stroke yet' : n === 1 ? '1 stroke' : `${n} strokes`),
    lastStroke: 'last',
    checks: 'What to check, and what not to do',
    work: 'Work done, and whether it helped',
    lends: (rooms: number | null) =>
      `${lenders(rooms, 'Others')} of the same model will lend it what is normal, so it learns sooner.`,
    borrowed: (share: string, rooms: number | null) =>
      `${share} of its normal is borrowed from ${lenders(rooms, 'others')} of the same model.`,
    notFound: 'This room was not found',
    notNow: 'This room cannot be shown just now',
    drives: {
      'in-wall': 'motors in the wall',
      'through-frame': 'rams through the frame',
      cable: 'cables',
      other: 'other drive',
    },
  },

  trend: {
    title: 'Over time',
    measure: 'Show',
    direction: 'Direction',
    side: (side: string) => `Side: ${side}`,
    bothSides: 'Both sides together',
    asMeasured: 'as measured',
    adjusted: (reference: string) => `adjusted to ${reference}`,
    point: (how: string) => `a stroke, ${how}`,
    scale: 'Values',
    adjustedMeans: 'As if battery and weather were always the same, so that days can be compared.',
    empty: 'No stroke in this direction yet.',
    normal: 'normal band',
    centre: 'middle of the normal',
    expected: 'expected for that stroke',
    beyond: 'outside the normal',
    service: 'work done',
    learning: 'learning, not judged yet',
    serviceLine: 'service line',
    forecast: 'if it goes on like this: when the service line is reached',
    summary: {
      forecast: (line: string, strokes: string, span: string, coverage: string) =>
        `If it goes on like this, it reaches the service line of ${line} in about ${strokes} more strokes this way, ${span} (${coverage} sure).`,
      atLeast: (strokes: string) => `${strokes} or more`,
      span: (n: number, from: string, to: string) =>
        n === 1 ? `1 stroke, on ${from}.` : `${n} strokes from ${from} to ${to}.`,
      latest: (value: string) => `The latest is ${value}.`,
      band: (lower: string, upper: string) => `Its normal is ${lower} to ${upper}.`,
      noBand: 'Its normal is not known yet.',
      beyond: (n: number) =>
        n === 0
          ? 'No single stroke is outside the normal.'
          : n === 1
            ? '1 is outside the normal.'
            : `${n} are outside the normal.`,
    },
    table: 'As a table',
    latestOnly: (n: number) => `The latest ${n}, newest first.`,
    when: 'When',
    value: 'As measured',
    expectedColumn: 'Expected',
    adjustedColumn: 'Adjusted',
    inside: 'inside its normal',
    above: 'above its normal',
    below: 'below its normal',
    notJudged: 'not judged',
    hint: 'Drag across to look closer. Click a point to open its stroke.',
    touchHint: 'Two fingers look closer. The table below opens each stroke.',
  },

  strokes: {
    title: 'Strokes',
    empty: 'No stroke has come in yet.',
    addRecording: 'Add a recording from a file',
    caption: 'Newest first',
    when: 'When',
    running: (side: string) => `Running, ${side}`,
    duration: 'Time',
    spikes: (n: number) => (n === 1 ? '1 spike' : `${n} spikes`),
    dips: (n: number) => (n === 1 ? '1 dip' : `${n} dips`),
    excluded: 'set aside',
    unusable: 'not usable',
    pending: 'being worked out',
    doubtful: 'in doubt',
  },

  services: {
    title: 'Work done',
    empty: 'No work recorded yet.',
    record: 'Record work',
    kind: 'What was done',
    otherwise: 'Another day, one side, or notes',
    at: 'When',
    atHint: 'Leave it empty if it was just now.',
    side: 'Side',
    whole: 'The whole room',
    notes: 'Notes',
    saved: (kind: string) => `Saved: ${kind}. The strokes from now on will show whether it helped.`,
    undo: 'Undo',
    undone: 'Undone.',
    compare: 'Before and after',
    compareOf: (kind: string, day: string) => `Before and after: ${kind}, ${day}`,
    anySpans: 'Compare any two spans of days',
    helped: 'Did it help?',
    tooSoon: 'It takes two strokes before the work and two after it to tell: one out and one in will do.',
    atMissing: 'Enter when the work was done.',
    atFuture: 'This moment has not come yet. Enter when the work was done.',
    atLongAgo: 'That is before the year 2000. Enter when the work was done.',
    change: 'Change',
    remove: 'Remove',
    toolOf: (what: string, kind: string, day: string) => `${what}: ${kind}, ${day}`,
    removeMeans: 'The room is then judged as if this work had never been done.',
    removeIt: 'Yes, remove it',
    removing: 'Removing…',
    keepIt: 'Keep it',
    kinds: {
      cleaned: 'Cleaned',
      lubricated: 'Lubricated',
      'fasteners-seated': 'Fasteners seated',
      'gear-replaced': 'Gear replaced',
      'block-replaced': 'Guide block replaced',
      'motor-replaced': 'Motor replaced',
      retimed: 'Sides retimed',
      adjusted: 'Adjusted',
      other: 'Other work',
    },
  },
} as const;
