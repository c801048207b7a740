import { readdirSync, readFileSync } from 'node:fs';

/** Linux counts in hundredths of a second, whatever its own clock. */
const TICK_MS = 10;
/** Where they stand in /proc/<pid>/stat after the program's name, which may hold anything (man 5 proc). */
const PARENT = 1;
const USED = [11, 12];
const USED_BY_CHILDREN_THAT_ENDED = [13, 14];

/** Processor milliseconds of a process so far, its threads included. */
export function processorMs(pid: number): number {
  return ticks(statOf(pid), USED) * TICK_MS;
}

/** The same of the Postgres server that a backend belongs to, with all its processes. */
export function postgresMs(backendPid: number): number {
  const server = Number(statOf(backendPid)[PARENT]);
  const own = ticks(statOf(server), [...USED, ...USED_BY_CHILDREN_THAT_ENDED]);
  return readdirSync('/proc')
    .map(Number)
    .filter(Number.isInteger)
    .reduce((sum, pid) => sum + ofChild(pid, server), own * TICK_MS);
}

function ofChild(pid: number, parent: number): number {
  try {
    const stat = statOf(pid);
    return Number(stat[PARENT]) === parent ? ticks(stat, USED) * TICK_MS : 0;
  } catch (error) {
    // It ended meanwhile.
    if (error instanceof Error && 'code' in error && (error.code === 'ENOENT' || error.code === 'ESRCH'))
      return 0;
    throw error;
  }
}

function statOf(pid: number): string[] {
  const text = readFileSync(`/proc/${pid}/stat`, 'utf8');
  return text.slice(text.lastIndexOf(')') + 2).split(' ');
}

function ticks(stat: readonly string[], places: readonly number[]): number {
  return places.reduce((sum, place) => sum + Number(stat[place]), 0);
}
