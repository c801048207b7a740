import { createContext } from 'preact';
import type { Person } from './api/types.ts';

/** Who is signed in. `epoch` grows with every sign-in, so that what was refused before is asked again. */
export interface Session {
  readonly state: 'asking' | 'in' | 'out';
  readonly person: Person | null;
  readonly epoch: number;
  readonly signedIn: (person: Person) => void;
  readonly signOut: () => Promise<void>;
}

export const SessionContext = createContext<Session>({
  state: 'asking',
  person: null,
  epoch: 0,
  signedIn: () => {},
  signOut: async () => {},
});
