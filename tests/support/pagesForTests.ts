import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const BUILD = fileURLToPath(new URL('../../dashboards/build.ts', import.meta.url));

/**
 * Builds the pages where a source is newer, so that no test looks at pages of before. In a process of its own: the test
 * runner says what kind of build it is after, and the pages are built as for people.
 */
export default async function setUp(): Promise<void> {
  const { NODE_ENV: _, ...env } = process.env;
  const { stdout } = await promisify(execFile)(process.execPath, ['--import', 'tsx', BUILD, '--if-stale'], {
    env,
  });
  if (stdout !== '') console.log(stdout.trimEnd());
}
