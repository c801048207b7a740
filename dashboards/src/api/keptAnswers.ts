import { remembered } from '../remember.ts';

/**
 * The last answers that a person's pages had, on the device, for when there is no network. Each person has a store of
 * its own; it is emptied when the person signs out and when another signs in. Where the browser has no such store
 * (plain http in a local network) nothing is kept.
 */
export interface KeptAnswer {
  readonly value: unknown;
  /** When the service gave it, milliseconds since 1970. */
  readonly atMs: number;
}

const STORES = 'answers-';
/** Raised with what pages rely on in an answer: one that pages of before kept lacks it, and is not shown by these. */
const SHAPE = 2;
const storeOf = (person: string): string => `${STORES}${SHAPE}-${person}`;

const AT = 'x-kept-at';
/** A trend of tens of thousands of strokes is not worth a phone's storage. */
const LARGEST_LETTERS = 1_000_000;
const MOST_ANSWERS = 150;
const FORGOTTEN_AT_ONCE = 30;

const hasStore = (): boolean => typeof caches !== 'undefined';
const addressOf = (path: string): string => `${location.origin}/api/v1${path}`;

/** Puts aside what the service just answered. */
export async function keepAnswer(path: string, value: unknown): Promise<void> {
  const person = remembered()?.person.id;
  if (!hasStore() || person === undefined) return;
  const text = JSON.stringify(value);
  if (text.length > LARGEST_LETTERS) return;
  try {
    const store = await caches.open(storeOf(person));
    await store.put(addressOf(path), new Response(text, { headers: { [AT]: String(Date.now()) } }));
    const keys = await store.keys();
    // They come in the order in which they were put there first.
    if (keys.length > MOST_ANSWERS)
      await Promise.all(keys.slice(0, FORGOTTEN_AT_ONCE).map((key) => store.delete(key)));
    // Whoever signed out in between takes it along.
    if (remembered()?.person.id !== person) await caches.delete(storeOf(person));
  } catch {
    // The device is full, or forbids it: the pages work without.
  }
}

export async function keptAnswer(path: string): Promise<KeptAnswer | null> {
  const person = remembered()?.person.id;
  if (!hasStore() || person === undefined) return null;
  try {
    const kept = await (await caches.open(storeOf(person))).match(addressOf(path));
    return kept === undefined ? null : { value: await kept.json(), atMs: Number(kept.headers.get(AT)) };
  } catch {
    return null;
  }
}

/** Empties every store save that of `person`. */
export async function forgetKeptAnswers(person: string | null): Promise<void> {
  if (!hasStore()) return;
  try {
    const names = await caches.keys();
    await Promise.all(
      names
        .filter((name) => name.startsWith(STORES) && name !== storeOf(person ?? ''))
        .map((name) => caches.delete(name)),
    );
  } catch {
    // A browser that forbids the store has kept nothing in it.
  }
}
