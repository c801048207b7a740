import { existsSync } from 'node:fs';
import { realpath } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import { setTimeout as wait } from 'node:timers/promises';
import { codeOf } from '../../ingest/errorCode.ts';
import { filesIn } from '../../server/database/embedded/cluster.ts';
import { endOrphans } from '../../server/database/embedded/postmaster.ts';
import type { ToKeeper } from './endWithUs.ts';

/** The process that `endWithUs.ts` starts: it listens until whoever started it has ended, and ends what is left then. */
const LOOK_EVERY_MS = 50;
/** As long as a service may take to end in good order. */
const END_WITHIN_MS = 10_000;

const groups = new Set<number>();
const dataDirs = new Set<string>();

for await (const line of createInterface({ input: process.stdin })) {
  const word: ToKeeper = JSON.parse(line);
  if ('group' in word) groups.add(checked(word.group));
  else if ('endedGroup' in word) groups.delete(word.endedGroup);
  else dataDirs.add(word.dataDir);
}
await Promise.all([...groups].map(endGroup));
await Promise.all([...dataDirs].map(endPostgresOf));

/** 0 and 1 would stand for the keeper's own group and for every process there is. */
function checked(group: number): number {
  if (!Number.isInteger(group) || group < 2) throw new RangeError(`${group} leads no process group.`);
  return group;
}

async function endGroup(group: number): Promise<void> {
  const deadline = performance.now() + END_WITHIN_MS;
  if (!signal(group, 'SIGTERM')) return;
  while (performance.now() < deadline) {
    await wait(LOOK_EVERY_MS);
    if (!signal(group, 0)) return;
  }
  signal(group, 'SIGKILL');
}

/** False where no process of the group is left. */
function signal(group: number, name: NodeJS.Signals | 0): boolean {
  try {
    return process.kill(-group, name);
  } catch (error) {
    if (codeOf(error) === 'ESRCH') return false;
    throw error;
  }
}

async function endPostgresOf(dataDir: string): Promise<void> {
  // Gone with all that was in it, as after every test that ended as it should.
  if (!existsSync(dataDir)) return;
  await endOrphans(filesIn(await realpath(dataDir)));
}
