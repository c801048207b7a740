import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startChild } from '../support/childService.ts';
import { signIn } from './loggerClient.ts';
import { playRig } from './playRig.ts';
import { hasRecordings, readRecordings } from './recordings.ts';
import { rigTable } from './rigTable.ts';

/** `npm run rig -- <folder>`: plays the recordings of a test rig into a service of its own and prints what it found. */
const PERSON = { email: 'rig@example.com', password: 'a long enough secret' };

async function main(folder: string): Promise<void> {
  const dataDir = await mkdtemp(join(tmpdir(), 'slideload-rig-'));
  const service = startChild(
    { DATA_DIR: dataDir, ADMIN_EMAIL: PERSON.email, ADMIN_PASSWORD: PERSON.password },
    'node',
  );
  try {
    const person = await signIn(await service.ready, PERSON.email, PERSON.password);
    console.log(rigTable(await playRig(person, readRecordings(folder))));
  } finally {
    service.signal('SIGTERM');
    await service.exited;
    await rm(dataDir, { recursive: true });
  }
}

const folder = process.argv[2];
if (folder === undefined || !hasRecordings(folder)) {
  console.error('Say where the recordings are: npm run rig -- <folder>. The README says how to obtain them.');
  process.exitCode = 1;
} else {
  await main(folder);
}
