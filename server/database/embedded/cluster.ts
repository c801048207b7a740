import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { chown, lchown, mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { OperatorError } from '../../operatorError.ts';
import type { PostgresBinaries } from './postgresBinaries.ts';
import type { RunAs } from './runAs.ts';
import { runProgram } from './runProgram.ts';
import type { SystemUser } from './unprivilegedUser.ts';

const SUPERUSER = 'slideload';
/** Where it listens. */
export const HOST = '127.0.0.1';

/** Where a data folder has the database, which is there once it is whole, and its password. */
export function filesIn(dataFolder: string): { readonly folder: string; readonly passwordFile: string } {
  return { folder: join(dataFolder, 'postgres'), passwordFile: join(dataFolder, 'postgres-password') };
}

export function urlOf(password: string, port: number): string {
  return `postgres://${SUPERUSER}:${password}@${HOST}:${port}/postgres`;
}

/** The files of one embedded database, all below one data folder. */
export interface Cluster {
  /** What Postgres calls its data directory. */
  readonly folder: string;
  readonly log: string;
  readonly password: string;
}

/** Opens the database files below a data folder, and makes them when there are none. */
export async function openCluster(
  dataFolder: string,
  binaries: PostgresBinaries,
  user: SystemUser | null,
  way: RunAs,
): Promise<Cluster> {
  const { folder, passwordFile } = filesIn(dataFolder);
  const password = await readPassword(passwordFile, user);
  if (existsSync(folder)) {
    await refuseOtherVersion(folder, binaries.major);
    await own(folder, user);
  } else await create(folder, passwordFile, binaries, user, way);
  return { folder, password, log: join(dataFolder, 'postgres.log') };
}

/** Made aside and renamed when whole: a start cut off half-way leaves nothing that looks like a database. */
async function create(
  folder: string,
  passwordFile: string,
  binaries: PostgresBinaries,
  user: SystemUser | null,
  way: RunAs,
): Promise<void> {
  const unfinished = `${folder}.unfinished`;
  await rm(unfinished, { recursive: true, force: true });
  await mkdir(unfinished, { mode: 0o700 });
  if (user !== null) await chown(unfinished, user.uid, user.gid);
  await runProgram(way, binaries.initdb, [
    `--pgdata=${unfinished}`,
    `--username=${SUPERUSER}`,
    `--pwfile=${passwordFile}`,
    '--auth=scram-sha-256',
    '--encoding=UTF8',
    '--locale-provider=builtin',
    '--locale=C.UTF-8',
    '--lc-messages=C',
    '--lc-collate=C',
    '--lc-ctype=C',
  ]);
  await rename(unfinished, folder);
}

/** Random, made once, readable by Postgres's user alone (and root). */
async function readPassword(path: string, user: SystemUser | null): Promise<string> {
  if (!existsSync(path)) {
    const unfinished = `${path}.unfinished`;
    await rm(unfinished, { force: true });
    await writeFile(unfinished, `${randomBytes(24).toString('base64url')}\n`, { mode: 0o600 });
    await rename(unfinished, path);
  }
  if (user !== null) await chown(path, user.uid, user.gid);
  return (await readFile(path, 'utf8')).trim();
}

async function refuseOtherVersion(folder: string, major: number): Promise<void> {
  const found = await readFile(join(folder, 'PG_VERSION'), 'utf8').catch((cause: unknown) => {
    throw new OperatorError(`${folder} holds no database that can be read.`, { cause });
  });
  if (Number.parseInt(found, 10) !== major)
    throw new OperatorError(
      `${folder} was written by Postgres ${found.trim()}, and this is Postgres ${major}: ` +
        'move it with pg_dump, or name another DATA_DIR.',
    );
}

/** The user's number may differ from last time, as when a container is made anew around the same data. */
async function own(folder: string, user: SystemUser | null): Promise<void> {
  const { uid } = await stat(folder);
  if (user === null && uid !== process.getuid?.() && process.platform !== 'win32')
    throw new OperatorError(`${folder} belongs to another user (${uid}): start as that user, or as root.`);
  if (user === null || uid === user.uid) return;
  for (const entry of await readdir(folder, { recursive: true }))
    await lchown(join(folder, entry), user.uid, user.gid);
  await chown(folder, user.uid, user.gid);
}
