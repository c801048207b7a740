import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { OperatorError } from '../../operatorError.ts';

export interface SystemUser {
  readonly uid: number;
  readonly gid: number;
}

const OWN_NAME = 'slideload';

/**
 * The user that Postgres runs as when the service is root, which Postgres refuses to be: `slideload`, made when
 * absent; where users cannot be made, one that every system has. Null when the service is not root itself.
 */
export function unprivilegedUser(): SystemUser | null {
  if (process.getuid?.() !== 0) return null;
  const found = lookUp(OWN_NAME) ?? create() ?? lookUp('postgres') ?? lookUp('nobody');
  if (found === null)
    throw new OperatorError('Postgres cannot run as root and no other user was found: set DATABASE_URL.');
  return found;
}

function lookUp(name: string): SystemUser | null {
  const uid = numberFrom('id', ['-u', name]);
  const gid = numberFrom('id', ['-g', name]);
  return uid === null || gid === null ? null : { uid, gid };
}

function numberFrom(command: string, words: string[]): number | null {
  const { status, stdout } = spawnSync(command, words, { encoding: 'utf8' });
  return status === 0 ? Number(stdout) : null;
}

function create(): SystemUser | null {
  const shell = ['/usr/sbin/nologin', '/sbin/nologin'].find((path) => existsSync(path)) ?? '/bin/false';
  const words = ['--system', '--user-group', '--no-create-home', '--home-dir', '/', '--shell', shell];
  spawnSync('useradd', [...words, OWN_NAME]);
  return lookUp(OWN_NAME);
}
