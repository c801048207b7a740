import { type SpawnOptions, spawnSync } from 'node:child_process';
import { OperatorError } from '../../operatorError.ts';
import type { SystemUser } from './unprivilegedUser.ts';

/** How to start a program of Postgres: the command in front of it, and as whom. */
export interface RunAs {
  readonly prefix: readonly string[];
  readonly options: SpawnOptions;
}

/** Reading below folders that only root may enter, and where that right is not to be had, the wider one. */
const CAPABILITIES = ['dac_read_search', 'dac_override'];

/**
 * Finds the way to run Postgres as `user` that reaches both its programs and its data. Mostly that is plainly as that
 * user. Where a folder above is closed to it (a clone below /root), `setpriv` lends it the right to pass through such
 * folders and no other right of root; `no_setuid_fixup` makes access(2) count that right too.
 */
export function findWayToRun(user: SystemUser | null, postgres: string, folder: string): RunAs {
  if (user === null) return { prefix: [], options: {} };
  const plain: RunAs = { prefix: [], options: { uid: user.uid, gid: user.gid } };
  const way = [plain, ...CAPABILITIES.map((capability) => lending(user, capability))].find(
    (each) =>
      succeeds(each, postgres, ['--version']) && succeeds(each, '/bin/sh', ['-c', 'cd "$1"', 'sh', folder]),
  );
  if (way !== undefined) return way;
  throw new OperatorError(
    `Postgres cannot run as root, and user ${user.uid} cannot enter ${folder} or ${postgres}: ` +
      'move them to where it can, or set DATABASE_URL.',
  );
}

function lending(user: SystemUser, capability: string): RunAs {
  const words = [
    `--reuid=${user.uid}`,
    `--regid=${user.gid}`,
    '--clear-groups',
    '--securebits=+no_setuid_fixup',
  ];
  return {
    prefix: ['setpriv', ...words, `--inh-caps=+${capability}`, `--ambient-caps=+${capability}`],
    options: {},
  };
}

/** The command with its words as this way runs it. */
export function commandLine(way: RunAs, program: string, words: readonly string[]): [string, string[]] {
  const [first = program, ...rest] = [...way.prefix, program, ...words];
  return [first, rest];
}

function succeeds(way: RunAs, program: string, words: readonly string[]): boolean {
  const { status, stderr } = spawnSync(...commandLine(way, program, words), {
    ...way.options,
    cwd: '/',
    encoding: 'utf8',
  });
  return status === 0 && !stderr?.includes('Permission denied');
}
