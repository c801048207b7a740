import { mkdir, readdir, readFile, rename, stat, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ifThere } from './ifThere.ts';

/**
 * Puts the service into three files, one for the process and one for each of its threads. Reading and translating some hundred
 * files one by one would take five times the processor time at each start, and twice the memory. Run as a program it says where
 * nothing may be written, and leaves everything as it is.
 */
const ROOT = fileURLToPath(new URL('../', import.meta.url));
const DIST = join(ROOT, 'server', 'dist');
const SOURCES = ['analysis', 'ingest', 'migrations', 'server', 'package-lock.json'];
const ENTRIES: Readonly<Record<string, string>> = {
  'main.mjs': 'server/main.ts',
  'threadEntry.mjs': 'server/work/thread/analysisThread.ts',
  'measureEntry.mjs': 'server/work/measuring/measureThread.ts',
  'compareEntry.mjs': 'server/results/comparing/compareThread.ts',
};
/** Of several hundred files itself. Every other package is left where it is: some must be there only once. */
const TAKEN_IN = ['kysely'];

/** Builds it where a source is newer than what was built, or nothing was. */
export async function buildIfStale(): Promise<void> {
  const built = await Promise.all(Object.keys(ENTRIES).map((name) => changedMs(join(DIST, name))));
  const newest = await Promise.all(SOURCES.map((name) => newestMs(join(ROOT, name))));
  if (Math.max(...newest) >= Math.min(...built)) await build();
}

async function build(): Promise<void> {
  const { build: bundle } = await import('esbuild');
  const { dependencies } = JSON.parse(await readFile(join(ROOT, 'package.json'), 'utf8'));
  const { outputFiles } = await bundle({
    absWorkingDir: ROOT,
    entryPoints: Object.entries(ENTRIES).map(([name, source]) => ({
      out: basename(name, '.mjs'),
      in: source,
    })),
    outdir: DIST,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    external: Object.keys(dependencies).filter((name) => !TAKEN_IN.includes(name)),
    sourcemap: 'linked',
    // The sources lie beside it: with them in the map, every start would read them twice.
    sourcesContent: false,
    legalComments: 'none',
    logLevel: 'warning',
  });
  await mkdir(DIST, { recursive: true });
  // Several may start at once: each file is put in place whole, the map before what names it.
  for (const { path, contents } of outputFiles.sort((a, b) => b.path.length - a.path.length)) {
    const unfinished = `${path}.${process.pid}`;
    await writeFile(unfinished, contents);
    await rename(unfinished, path);
  }
}

/** Milliseconds since 1970; 0 for what is not there. */
async function changedMs(path: string): Promise<number> {
  return (await ifThere(stat(path)))?.mtimeMs ?? 0;
}

async function newestMs(path: string): Promise<number> {
  if (path === DIST) return 0;
  const found = await stat(path);
  if (!found.isDirectory()) return found.mtimeMs;
  const times = await Promise.all((await readdir(path)).map((name) => newestMs(join(path, name))));
  return Math.max(0, ...times);
}

const NOT_WRITABLE = new Set(['EACCES', 'EPERM', 'EROFS']);

if (process.argv[1] === fileURLToPath(import.meta.url))
  await buildIfStale().catch((error: NodeJS.ErrnoException) => {
    if (!NOT_WRITABLE.has(error.code ?? '')) throw error;
    console.error(`What was built before is started: ${error.message}`);
  });
