import { constants, existsSync } from 'node:fs';
import { access, stat, statfs } from 'node:fs/promises';
import { resolve } from 'node:path';
import { filesIn } from '../../database/embedded/cluster.ts';
import { ifThere } from '../../ifThere.ts';
import { bytesInWords } from '../bytesInWords.ts';
import { attend, broken, type Finding, good } from './finding.ts';

/** With less free than this, a day of a busy lot may fill the disk. */
const LITTLE_BYTES = 2e9;
const NONE_BYTES = 1e8;
const OTHERS = 0o077;

/** The folder of the embedded Postgres: there, ours to write in, its secret kept, and room left on the disk. */
export async function examineDataFolder(dataDir: string): Promise<Finding[]> {
  const folder = resolve(dataDir);
  if ((await ifThere(stat(folder))) === null)
    return [attend(`${folder} is not there yet.`, 'The first start makes it.')];
  const findings: Finding[] = [await writable(folder), await room(folder)];
  if (!holdsDatabase(dataDir))
    findings.push(attend(`${folder} holds no database yet.`, 'The first start makes it.'));
  const { passwordFile } = filesIn(folder);
  const secret = await ifThere(stat(passwordFile));
  if (secret !== null && (secret.mode & OTHERS) !== 0)
    findings.push(
      broken('Others can read the password of the embedded Postgres.', `chmod 600 ${passwordFile}`),
    );
  return findings;
}

/** Whether a service ever started on the folder. */
export function holdsDatabase(dataDir: string): boolean {
  return existsSync(filesIn(resolve(dataDir)).folder);
}

async function writable(folder: string): Promise<Finding> {
  return access(folder, constants.W_OK).then(
    () => good(`${folder} can be written.`),
    () => broken(`${folder} cannot be written by this user.`, 'Start as the user that it belongs to.'),
  );
}

async function room(folder: string): Promise<Finding> {
  const { bavail, bsize } = await statfs(folder);
  const free = bavail * bsize;
  const what = `${bytesInWords(free)} free on the disk of ${folder}.`;
  if (free < NONE_BYTES) return broken(what, 'Strokes are refused when it is full: make room now.');
  return free < LITTLE_BYTES ? attend(what, 'Make room, or keep samples for fewer months.') : good(what);
}
