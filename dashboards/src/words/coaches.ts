/** The list of coaches. */
export const coachesWords = {
  coaches: {
    title: 'Coaches',
    order: 'Those that need you first come first.',
    empty: 'No coach yet',
    emptyHint:
      'A coach appears here once it is registered and its logger has an address to send to. The README shows how, with four commands.',
    noRooms: 'No rooms registered for this coach.',
    lastStroke: 'Last stroke',
    noStroke: 'No stroke yet',
    openWarnings: (n: number) => (n === 1 ? '1 open warning' : `${n} open warnings`),
    tally: (coaches: number, need: number) =>
      `${coaches === 1 ? '1 coach' : `${coaches} coaches`}, ${need === 0 ? 'no room asks for work' : need === 1 ? '1 room asks for work' : `${need} rooms ask for work`}.`,
  },
} as const;
