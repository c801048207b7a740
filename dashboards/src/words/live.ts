/** A stroke as it runs. */
export const liveWords = {
  live: {
    title: 'Running now',
    begun: (direction: string) => `A stroke is running. ${direction}.`,
    lost: 'The connection is lost. What the room does now is not seen here.',
    summary: (side: string, now: string, highest: string) => `${side}: now ${now}, highest ${highest}.`,
    until: (seconds: string) => `Recorded so far: ${seconds}.`,
    axis: 'Seconds from the start, as they come in',
    latest: 'Latest',
    highest: 'Highest',
    samples: 'Samples',
    finished: 'Just finished',
    finishedLead: (doing: string) => `The stroke ${doing} is worked out.`,
    open: 'Open this stroke',
  },
} as const;
