/**
 * The few paths that must look across accounts, each with its reason. Whatever is not named here sees the rows of its
 * scope alone; a new name is a decision to be argued for.
 */
const SPANNING = {
  migrating: 'a migration changes the rows of everybody',
  'first-account': 'whether there is any account can be asked only of all of them',
  'sign-in': 'an address is looked up before its account is known',
  invitation: 'whoever accepts one joins an account, or makes one and is let into another',
  broker: 'a topic that the broker vouches for names a logger without its account',
  tidying: 'sessions and remembered answers run out in every account alike',
  queue: 'the worker takes rooms of any account, and begins with those left over from before',
  partitions: 'the samples of a month lie together, whosever they are',
  notices:
    'whoever is told of a room may be of another account, and what is due is taken of all accounts alike',
  commands: 'whoever is at the command line of the machine looks after all accounts',
} as const satisfies Record<string, string>;

export type SpanningPath = keyof typeof SPANNING;
