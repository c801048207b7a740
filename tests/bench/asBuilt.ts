import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const HERE = fileURLToPath(new URL('.', import.meta.url));
/** Where the packages that it loads are found from. */
const BUILT = fileURLToPath(new URL('../../node_modules/.cache/bench', import.meta.url));

/**
 * Loads a file of this folder in one piece with all that it takes from ours, as the service runs (`server/build.ts`). Read
 * file by file, functions within functions are given their names each time that they are made: a seventh of the analysis.
 */
export async function asBuilt<Module>(name: string): Promise<Module> {
  const outfile = join(BUILT, `${name}.mjs`);
  await build({
    entryPoints: [join(HERE, `${name}.ts`)],
    outfile,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    logLevel: 'warning',
  });
  return import(pathToFileURL(outfile).href);
}
