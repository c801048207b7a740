/** What stands around and between the pages. */
export const shellWords = {
  name: 'Slideload',
  /** The language that these words are in. */
  language: 'en',
  tagline: 'How your slide rooms are running, and which need work.',
  skip: 'Skip to the content',
  loading: 'Loading…',
  tryAgain: 'Try again',
  more: 'Show more',
  restOfText: 'Show all of it',
  lessOfText: 'Show less',
  none: '–',
  printed: 'Printed',
  joint: ' · ',
  justNow: 'just now',
  onlySide: 'Motor',
  reference: (volts: string, temperature: string) => `${volts} and ${temperature}`,
  tableOf: (what: string) => `Table: ${what}`,
  stale: (problem: string) => `What you see is from before. ${problem}`,
  promise:
    'These are measurements and likely causes, not a promise. Look before you move a room, and keep everyone out of its travel.',

  nav: {
    label: 'Main',
    coaches: 'Coaches',
    people: 'People',
    settings: 'Settings',
    signOut: 'Sign out',
    trail: 'Where you are',
  },

  offline: {
    noNetwork: (ago: string) =>
      `No network now. What you see is from ${ago}; it updates by itself once there is one.`,
    slow: (ago: string) => `What you see is from ${ago}. Asking for the latest…`,
  },

  problems: {
    network: 'The service cannot be reached. Check the connection.',
    notSent:
      'The service cannot be reached. What you entered is still here. Send it again once there is a network.',
    service: 'The service could not answer. Nothing was changed; try again in a minute.',
    unanswered: 'The service could not answer. Try again in a minute.',
    busy: 'The service is busy. It is asked again by itself in a moment.',
    refused: 'The service did not accept this.',
    page: 'Something went wrong on this page.',
    tooMany: (waitS: number) =>
      waitS > 0
        ? `Too many attempts. Wait ${Math.max(1, Math.ceil(waitS / 60))} min and try again.`
        : 'Too many attempts. Wait a quarter of an hour and try again.',
    notFound: 'There is nothing here that you may see. It may have been removed.',
  },

  signIn: {
    title: 'Sign in',
    again: 'You were signed out. Sign in to go on; what you typed is still there.',
    email: 'E-mail',
    password: 'Password',
    submit: 'Sign in',
    busy: 'Signing in…',
    wrong: 'This e-mail or password is wrong.',
    emailMissing: 'Enter your e-mail address.',
    passwordMissing: 'Enter your password.',
    show: 'Show what is typed',
    forgot: 'Forgot your password?',
  },

  setUp: {
    title: 'Set up Slideload',
    lead: 'This makes the first account. The link works once.',
    noToken: 'This link is not complete. Open all of it, exactly as the service printed it.',
    name: 'Your name',
    email: 'E-mail',
    password: 'Password',
    passwordHint: 'At least 12 characters.',
    passwordShort: 'The password needs at least 12 characters.',
    nameMissing: 'Enter your name.',
    submit: 'Make the account',
    busy: 'Making the account…',
  },

  directions: { extend: 'Going out', retract: 'Coming in', unknown: 'Direction unknown' },
  /** Within a sentence. */
  doing: { extend: 'going out', retract: 'coming in' },
  /** Where a technician says which way a record ran: with the words of its file and of the switch. */
  directionChoices: { extend: 'Going out (extend)', retract: 'Coming in (retract)' },

  units: { seconds: 's', travelPercent: (percent: string) => `${percent} of the travel` },

  missing: { title: 'Nothing here', text: 'There is no page at this address.', back: 'To the coaches' },
} as const;
