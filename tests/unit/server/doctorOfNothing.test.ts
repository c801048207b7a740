import { existsSync } from 'node:fs';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { examine } from '../../../server/commands/doctor/examine.ts';
import { readConfiguration } from '../../../server/configuration.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'slideload-doctor-'));
});
afterEach(() => rm(folder, { recursive: true }));

const saidOf = async (dataDir: string) =>
  (await examine(readConfiguration({ DATA_DIR: dataDir }), new Date())).map(({ what }) => what);

test('doctor makes nothing where nothing is', async () => {
  const missing = join(folder, 'data');
  expect(await saidOf(missing)).toContain(`${missing} is not there yet.`);
  expect(existsSync(missing)).toBe(false);
  expect(await saidOf(folder)).toContain(`${folder} holds no database yet.`);
  expect(await readdir(folder)).toEqual([]);
});
