import { chmod, mkdir, realpath, stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import { OperatorError } from '../../operatorError.ts';
import { rest } from '../../rest.ts';
import { HOST, openCluster, urlOf } from './cluster.ts';
import { lockFolder } from './folderLock.ts';
import { findPostgresBinaries } from './postgresBinaries.ts';
import { endOrphans, type Postmaster, startPostmaster } from './postmaster.ts';
import { quietPort } from './quietPort.ts';
import { findWayToRun } from './runAs.ts';
import { unprivilegedUser } from './unprivilegedUser.ts';

interface EmbeddedPostgres {
  readonly url: string;
  stop(): Promise<void>;
}

interface EmbeddedOptions {
  /** Settings beside our own; tests give up durability for speed. */
  readonly settings?: Readonly<Record<string, string>>;
  /** Told when the server ended by itself and cannot be started again yet; once for each reason. */
  readonly onTrouble?: (reason: unknown) => void;
}

/** Between two attempts to start a server that ended by itself: what it lacks, such as room on its disk, may come. */
const TRY_AGAIN_AFTER_MS = 1000;

/**
 * A real Postgres under a data folder, on a free port of the loopback interface with a random password. It is started
 * again should it end by itself. Throws `OperatorError` with one clear line for whatever stands in its way.
 */
export async function startEmbeddedPostgres(
  dataDir: string,
  options: EmbeddedOptions = {},
): Promise<EmbeddedPostgres> {
  const folder = await prepareFolder(dataDir);
  const release = await lockFolder(folder);
  try {
    const binaries = await findPostgresBinaries();
    const user = unprivilegedUser();
    if (user !== null) await letPass(folder);
    const way = findWayToRun(user, binaries.postgres, folder);
    const cluster = await openCluster(folder, binaries, user, way);
    const port = await quietPort();
    const start = async () => {
      await endOrphans(cluster);
      return startPostmaster(way, binaries.postgres, cluster, { ...ourSettings(port), ...options.settings });
    };
    const stop = supervise(await start(), start, options.onTrouble);
    return {
      url: urlOf(cluster.password, port),
      stop: async () => {
        await stop();
        await release();
      },
    };
  } catch (error) {
    await release();
    throw error;
  }
}

function ourSettings(port: number): Record<string, string> {
  return {
    port: String(port),
    listen_addresses: HOST,
    // The loopback interface and the password are enough; a socket would need a folder that both users may enter.
    unix_socket_directories: '',
    log_min_messages: 'warning',
  };
}

/** Starts the server again when it ends by itself, as often as it takes. Answers how to stop it for good. */
function supervise(
  first: Postmaster,
  start: () => Promise<Postmaster>,
  onTrouble: EmbeddedOptions['onTrouble'],
): () => Promise<void> {
  let running = first;
  let restarting: Promise<void> = Promise.resolve();
  const stopping = new AbortController();
  const restart = async (): Promise<void> => {
    let told = '';
    while (!stopping.signal.aborted) {
      try {
        running = await start();
        return watch();
      } catch (reason) {
        if (String(reason) !== told) onTrouble?.(reason);
        told = String(reason);
        await rest(TRY_AGAIN_AFTER_MS, stopping.signal);
      }
    }
  };
  const watch = (): void => {
    void running.ended.then(() => {
      if (!stopping.signal.aborted) restarting = restart();
    });
  };
  // Should this process end without stopping it, by a fault of ours or in a hurry, the server follows in good order.
  const onExit = (): void => running.interrupt();
  process.once('exit', onExit);
  watch();
  return async () => {
    stopping.abort();
    await restarting;
    await running.stop();
    process.off('exit', onExit);
  };
}

async function prepareFolder(dataDir: string): Promise<string> {
  const wanted = resolve(dataDir);
  try {
    await mkdir(wanted, { recursive: true });
    return await realpath(wanted);
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : '';
    throw new OperatorError(`DATA_DIR ${wanted} cannot be made: ${why}`, { cause });
  }
}

/** Lets Postgres's own user pass through the data folder, which holds nothing else that is readable for it. */
async function letPass(folder: string): Promise<void> {
  const { mode } = await stat(folder);
  if ((mode & 0o001) === 0) await chmod(folder, (mode & 0o7777) | 0o011);
}
