import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { expect, test } from 'vitest';
import { isRunning } from '../../../server/database/embedded/processes.ts';
import { postmasterPid, servicePid, startChild } from '../../support/childService.ts';
import { endLeftovers } from '../../support/endWithUs.ts';

const ADMIN = { ADMIN_EMAIL: 'mara@example.com', ADMIN_PASSWORD: 'a long enough secret' };

async function inNewFolder(use: (dataDir: string) => Promise<void>): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'slideload-leftovers-'));
  // Below a folder that stays: Postgres's own user must find its way in.
  await use(join(folder, 'below'));
  await rm(folder, { recursive: true });
}

async function processesOf(dataDir: string): Promise<number[]> {
  return [await servicePid(dataDir), await postmasterPid(dataDir)];
}

test('a service that a test file leaves running ends with the file, and its database too', () =>
  inNewFolder(async (dataDir) => {
    await startChild({ DATA_DIR: dataDir, ...ADMIN }).ready;
    const left = await processesOf(dataDir);
    expect(left.map(isRunning)).toEqual([true, true]);
    await endLeftovers();
    expect(left.map(isRunning)).toEqual([false, false]);
  }));

test('so does the database of a service that was killed', () =>
  inNewFolder(async (dataDir) => {
    const killed = startChild({ DATA_DIR: dataDir, ...ADMIN }, 'node');
    await killed.ready;
    const left = await processesOf(dataDir);
    killed.signalGroup('SIGKILL');
    await killed.exited;
    expect(left.map(isRunning)).toEqual([false, true]);
    await endLeftovers();
    expect(left.map(isRunning)).toEqual([false, false]);
  }));

test('they end as well where the process that started them is killed at once', () =>
  inNewFolder(async (dataDir) => {
    const module = new URL('../../support/childService.ts', import.meta.url).href;
    const start = `const { startChild } = await import(${JSON.stringify(module)});
      await startChild(${JSON.stringify({ DATA_DIR: dataDir, ...ADMIN })}, 'node').ready;
      console.log('started');`;
    const starter = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', start], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    await once(createInterface({ input: starter.stdout }), 'line');
    const left = await processesOf(dataDir);
    expect(left.map(isRunning)).toEqual([true, true]);
    starter.kill('SIGKILL');
    await expect.poll(() => left.map(isRunning)).toEqual([false, false]);
  }));
