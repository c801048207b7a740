/** Before and after. */
export const compareWords = {
  title: 'Before and after',
  choose: 'Choose the work whose effect you want to see, or two spans of days.',
  workGone:
    'The work that this link names is no longer on record. Somebody may have deleted it, or it belongs to another room.',
  byWork: 'Around work that was done',
  bySpans: 'Between two spans of days',
  shown: 'shown above',
  print: 'Print or save as PDF',
  finding: 'What was found',
  helped: {
    yes: (work: string, day: string) => `Yes: since “${work}” on ${day} the room draws less than before.`,
    mostly: (work: string, day: string) =>
      `Yes, on the whole: since “${work}” on ${day} the room draws less, though part of it draws a little more.`,
    partly: (work: string, day: string) =>
      `In part: since “${work}” on ${day} the room draws less than before, but its warning has not gone.`,
    likely: (work: string, day: string) =>
      `Likely yes: since “${work}” on ${day} its warning has gone. The current shows no clear change.`,
    same: (work: string, day: string) =>
      `No clear change yet: since “${work}” on ${day} the current has not clearly changed.`,
    placeLess: (work: string, day: string) =>
      `Yes, at a place of the travel: since “${work}” on ${day} the room draws less there.`,
    placePartly: (work: string, day: string) =>
      `In part: since “${work}” on ${day} the room draws less at a place of the travel, but its warning has not gone.`,
    placeMore: (work: string, day: string) =>
      `No, it is worse at a place of the travel: since “${work}” on ${day} the room draws more there.`,
    both: (work: string, day: string) =>
      `Neither yes nor no: since “${work}” on ${day} part of the room draws less and part of it more.`,
    more: (work: string, day: string) =>
      `No, it is worse: since “${work}” on ${day} the room draws more than before.`,
    lostLoad: (work: string, day: string) =>
      `No: since “${work}” on ${day} a side has run with hardly any load. That it draws less is not good news.`,
    unknown: (work: string, day: string) =>
      `Too early to tell: too few strokes have come in around “${work}” on ${day}.`,
  },
  between: {
    less: 'The room draws less in the later span than in the earlier.',
    mostlyLess:
      'The room draws less in the later span than in the earlier, though part of it draws a little more.',
    placeLess: 'At a place of the travel the room draws less in the later span than in the earlier.',
    placeMore: 'At a place of the travel the room draws more in the later span than in the earlier.',
    same: 'The current shows no clear change between the two spans.',
    both: 'Part of the room draws less in the later span, and part of it more.',
    more: 'The room draws more in the later span than in the earlier.',
    lostLoad: 'In the later span a side runs with hardly any load. That it draws less is not good news.',
    unknown: 'There are too few strokes in these spans to tell.',
  },
  warningGone: (kind: string, day: string) =>
    `The warning that was open before it, “${kind}”, has been gone since ${day}.`,
  warningStands: (kind: string) => `The warning that was open before it, “${kind}”, is still open.`,
  warningArose: (kind: string) => `A warning has come up since: “${kind}”.`,
  pictures: 'Along the travel, and measure by measure',
  before: 'Before',
  after: 'After',
  beforeKey: 'before: line of the mean, band from the lowest to the highest stroke',
  afterKey: 'after: the same',
  change: 'Change, 95% interval',
  changed: 'place that clearly changed',
  intervalKey: 'change with its 95% interval, each by itself; the upright line is no change',
  measure: 'Measure',
  from: 'From',
  coach: 'Coach',
  room: 'Room',
  work: 'Work done',
  workOn: 'On',
  notes: 'Notes',
  printed: 'As of',
  span: (from: string, to: string) => `${from} to ${to}`,
  spanOf: (strokes: number, from: string, to: string) =>
    `${strokes === 1 ? '1 stroke' : `${strokes} strokes`}, ${from === to ? from : `${from} to ${to}`}`,
  since: (warning: string) => `since “${warning}”`,
  group: (side: string, doing: string) => `${side}, ${doing}`,
  counted: (before: number, after: number) =>
    `${before === 1 ? '1 stroke' : `${before} strokes`} before, ${after} after`,
  less: 'less',
  more: 'more',
  ofLoad: (size: string) => `${size} of the load`,
  ofRunning: (size: string) => `${size} of the running current`,
  sure: (shift: string, near: string, far: string) => `${shift} (${near} to ${far})`,
  unsure: (lower: string, upper: string) => `No clear change: ${lower} to ${upper}`,
  notTold: 'Too few strokes to tell',
  noPlaces: 'No single place of the travel clearly changed.',
  places: (places: string, others: number) =>
    others === 0
      ? `Clearly changed: ${places}.`
      : `Clearly changed, most of all: ${places}; and ${others} more places, all marked below.`,
  place: (from: string, to: string, change: string) => `${change} from ${from} to ${to} of the travel`,
  everywhere: (change: string) => `${change} along the whole travel`,
  tableCaption: (reference: string) => `Adjusted to ${reference}`,
  otherMeasures: (reference: string) => `The other measures, adjusted to ${reference}`,
  moreNumbers: (group: string) => `All numbers: ${group}`,
  tooFewHere: 'There are not enough strokes in this direction, before and after.',
  tooFew:
    'It takes two strokes before the work and two after it: one out and one in, or two of one direction. This page fills itself once they have come in. Counted so far:',
  tooFewInSpans:
    'It takes two strokes in each of the two spans: one out and one in, or two of one direction. Counted:',
  spans: {
    beforeFrom: 'Before: first day',
    beforeTo: 'Before: last day',
    afterFrom: 'After: first day',
    afterTo: 'After: last day',
  },
  dayMissing: 'Enter a day.',
  dayReversed: 'The last day is before the first.',
  dayAhead: 'This day is still to come.',
  afterEarlier: 'This is earlier than “before”. Give the earlier days as “before”.',
  spansOverlap: 'The two spans overlap. “After” must begin later than the last day of “before”.',
  spansWrong: 'These two spans cannot be compared.',
  compareSpans: 'Compare',
  cautionsTitle: 'Before you rely on this',
  cautions: [
    "The maker's manual and local codes come first; this sheet replaces neither.",
    'These are measurements of current, not a promise that a room may be stood under, leaned on or relied on.',
    'Keep everyone out of the travel while a room moves, and secure it before towing.',
    'Support the room and take the weight off before loosening anything; disconnect the supply first, and know what the brake does then.',
    'Never bypass or upsize a fuse or breaker. Leave structural and electrical repair to a licensed technician.',
  ],
  method: 'How it was worked out.',
  ownScale: 'Each interval is drawn on a scale of its own.',
} as const;
