import { setMaxListeners } from 'node:events';
import { setTimeout as pause } from 'node:timers/promises';
import { type Kills, killAtRandom } from './chaos.ts';
import type { Crew } from './crew.ts';
import { drawSoakRooms, STROKES_A_ROOM } from './fleet.ts';
import type { Caller } from './insist.ts';
import { runReaders } from './readers.ts';
import { type Promised, runSenders } from './senders.ts';
import { type Flatness, watchVitals } from './vitals.ts';
import { type Watcher, watchRoom } from './watchers.ts';

export interface TurmoilOptions {
  readonly minutes: number;
  readonly seed: number;
  readonly strokesASecond: number;
  readonly secondsBetweenKills: number;
  readonly loggers: number;
  readonly readers: number;
  readonly watchers: number;
}

/** What the time of trouble left behind. */
export interface Turmoil {
  readonly promised: readonly Promised[];
  readonly ackMs: readonly number[];
  /** Answers to readers by status; 0: nobody answered. */
  readonly statuses: ReadonlyMap<number, number>;
  readonly kills: Kills;
  readonly vitals: readonly Flatness[];
  /** They still watch. */
  readonly watchers: readonly Watcher[];
  readonly stopWatching: () => void;
}

/** Keeps a crew busy and in trouble for so many minutes; what is seen to be wrong goes into `faults`. */
export async function turmoil(
  crew: Crew,
  person: Caller,
  cluster: string,
  options: TurmoilOptions,
  faults: string[],
): Promise<Turmoil> {
  const { minutes, seed, strokesASecond: rate, loggers } = options;
  const end = new AbortController();
  const watching = new AbortController();
  const { signal: until } = end;
  // Everybody listens to the end.
  setMaxListeners(0, until, watching.signal);
  const rooms = drawSoakRooms(seed, Math.ceil((minutes * 60 * rate * 1.5) / STROKES_A_ROOM) + loggers);
  const sending = { promised: [] as Promised[], ackMs: [], faults };
  const reading = { statuses: new Map<number, number>(), faults };
  const watchers: Watcher[] = [];

  const vitals = watchVitals(crew, until);
  const killing = killAtRandom({ crew, cluster, seed, meanSeconds: options.secondsBetweenKills, until });
  const senders = runSenders({ person, rooms, seed, atOnce: loggers, rate, until }, sending);
  const readers = runReaders(person, sending.promised, { seed, atOnce: options.readers, until }, reading);
  const seating = setInterval(() => {
    const next = sending.promised[watchers.length];
    if (watchers.length < options.watchers && next !== undefined)
      watchers.push(watchRoom(person, next.there.roomId, watching.signal));
  }, 1000);
  // A sender that cannot go on ends the run before its time.
  await Promise.race([pause(minutes * 60_000), Promise.all([senders, readers])]);
  end.abort();
  clearInterval(seating);
  await Promise.all([senders, readers]);
  return {
    ...sending,
    statuses: reading.statuses,
    kills: await killing,
    vitals: await vitals,
    watchers,
    stopWatching: () => watching.abort(),
  };
}
