import { createContext } from 'preact';
import type { Person, Settings } from './api/types.ts';
import { DEVICE } from './reader.ts';

/** Who is signed in. `epoch` grows with every sign-in, so that what was refused before is asked again. */
export interface Session {
  readonly state: 'asking' | 'in' | 'out';
  readonly person: Person | null;
  readonly settings: Settings;
  readonly epoch: number;
  readonly signedIn: (person: Person) => void;
  readonly signOut: () => Promise<void>;
  readonly setSettings: (settings: Settings) => void;
}

export const SessionContext = createContext<Session>({
  state: 'asking',
  person: null,
  settings: DEVICE,
  epoch: 0,
  signedIn: () => {},
  signOut: async () => {},
  setSettings: () => {},
});
