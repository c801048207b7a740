import type { Person, Settings } from './api/types.ts';

/** Who was signed in here last, so that the pages know it at once and without a network. */
export interface Remembered {
  readonly person: Person;
  readonly settings: Settings;
}

const KEY = 'slideload:person';

/** A browser may forbid storage altogether: then nothing is remembered. */
function storage(): Storage | null {
  try {
    return localStorage;
  } catch {
    return null;
  }
}

export function remembered(): Remembered | null {
  return read(storage()?.getItem(KEY) ?? null);
}

export function remember(who: Remembered): void {
  try {
    storage()?.setItem(KEY, JSON.stringify(who));
  } catch {
    // It is full: the next start asks the service.
  }
}

export function forgetPerson(): void {
  storage()?.removeItem(KEY);
}

/** Tells when another tab signs somebody else in, or everybody out. */
export function whenAnotherTabChanges(then: (now: Remembered | null) => void): () => void {
  const heard = (event: StorageEvent) => {
    if (event.key === KEY || event.key === null) then(read(event.newValue));
  };
  window.addEventListener('storage', heard);
  return () => window.removeEventListener('storage', heard);
}

function read(text: string | null): Remembered | null {
  if (text === null) return null;
  try {
    // Of what this page wrote; whatever else stands there has no person with an id.
    const { person, settings } = JSON.parse(text) as Partial<Remembered>;
    return typeof person?.id === 'string' && settings !== undefined ? { person, settings } : null;
  } catch {
    // Written by an older page, or by somebody else.
    return null;
  }
}
