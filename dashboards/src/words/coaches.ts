/** The list of coaches. */
export const coachesWords = {
  coaches: {
    title: 'Coaches',
    empty: 'No coach yet',
    emptyHint: 'Add your first coach. Then add its rooms, and the logger that sends their strokes.',
    emptyOwner: 'A coach shows here once somebody lets you see it.',
    noRooms: 'No room yet.',
    lastStroke: 'Last stroke',
    noStroke: 'No stroke yet',
    add: 'Add a coach',
    openWarnings: (n: number) => (n === 1 ? '1 open warning' : `${n} open warnings`),
    tally: (coaches: number, need: number) =>
      `${coaches === 1 ? '1 coach' : `${coaches} coaches`}, ${need === 0 ? 'no room needs work' : need === 1 ? '1 room needs work' : `${need} rooms need work`}.`,
    silent: (n: number) => (n === 1 ? '1 logger is silent.' : `${n} loggers are silent.`),
  },

  lot: {
    counting: 'Counting your coaches…',
    since: (when: string) => `Since ${when}:`,
    firstLook: 'From your next visit on, this line says what has changed.',
    worse: (n: number) => `${n} worse`,
    better: (n: number) => `${n} better`,
    cleared: (n: number) => `${n} cleared`,
    arrived: (n: number) => `${n} new`,
    nothing: 'nothing changed.',
    was: (word: string) => `was ${word}`,
    isNew: 'new here',
    filters: 'Choose which coaches are shown',
    search: 'Search coach, model or room',
    searched: (text: string) => `Search: “${text}”`,
    more: 'Filters and order',
    model: 'Model',
    room: 'Room',
    verdict: 'Verdict',
    sort: 'Order',
    any: 'Any',
    onlySilent: 'Silent loggers only',
    onlyChanged: 'Changed since then only',
    reset: 'Show all',
    sorts: {
      concern: 'By concern',
      name: 'By name',
      heard: 'Longest silent first',
      newest: 'Newest first',
    },
    none: 'No coach matches',
    noneHint: 'Nothing here has everything that you asked for.',
    listOf: 'List of coaches',
    shown: (shown: number, more: boolean) =>
      `${shown === 1 ? '1 coach' : `${shown} coaches`} shown${more ? ', and there are more' : ''}.`,
    heard: 'logger heard',
    neverHeard: 'logger never heard',
    noLogger: 'no logger',
    silentFor: 'silent',
    borrowed: (share: string) => `${share} of its normal borrowed`,
    seenAndThere: 'seen, still there',
    select: (name: string) => `Select ${name}`,
    selectShown: 'Select all shown',
    chosen: (n: number) => (n === 1 ? '1 coach selected' : `${n} coaches selected`),
    unchoose: 'Clear the selection',
    acknowledge: 'Mark their warnings as seen',
    acknowledging: 'Saving…',
    acknowledged: (n: number) =>
      n === 0
        ? 'None of them had an open warning.'
        : n === 1
          ? '1 warning marked as seen.'
          : `${n} warnings marked as seen.`,
    note: 'Note for all of them (optional)',
    csvShown: 'Save the whole list as CSV',
    csvChosen: 'Save the selected as CSV',
    saving: 'Loading…',
    fileName: 'coaches.csv',
  },

  seeAll: {
    title: (n: number) => (n === 1 ? 'Mark the open warning as seen' : `Mark all ${n} open warnings as seen`),
    lead: 'This says that you know about them. It fixes nothing: they stay open until the room runs normally again.',
    submit: (n: number) => (n === 1 ? 'I have seen it' : `I have seen all ${n}`),
  },
} as const;
