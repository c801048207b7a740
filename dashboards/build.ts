import { createHash } from 'node:crypto';
import { readdir, readFile, stat, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { brotliCompress, gzip } from 'node:zlib';
import type { Plugin } from 'vite';
import { SHORTEST_PASSWORD } from './src/people/shortestPassword.ts';

/**
 * Builds the pages into `dashboards/dist`. With `--if-stale` it does so only when a source is newer than the
 * last build. Where Vite is not installed it says so and leaves everything as it is.
 */
const here = dirname(fileURLToPath(import.meta.url));
const built = join(here, 'dist', 'index.html');

const TEXT = /\.(js|css|html|svg|webmanifest)$/;

const PREACT = { jsx: { runtime: 'automatic', importSource: 'preact' } } as const;
/** What every page needs comes in one piece, save what fetches that. */
const PIECES = [
  { name: 'fetch', test: /preload-helper/, priority: 1 },
  { name: 'start', test: /src\/start\.tsx$/ },
];
const COMMON = { root: here, configFile: false, logLevel: 'warn' } as const;

/**
 * Has those fetched with the page and not run: what the service drew is painted first. Without this they would be asked
 * for only after that.
 */
const FETCH_EARLY: Plugin = {
  name: 'fetch-early',
  transformIndexHtml: {
    order: 'post',
    handler: (_, { bundle = {} }) =>
      Object.values(bundle)
        .filter((piece) => piece.type === 'chunk' && piece.name === 'start')
        .map(({ fileName }) => ({
          tag: 'link',
          attrs: {
            rel: 'preload',
            as: 'script',
            crossorigin: true,
            fetchpriority: 'low',
            href: `/${fileName}`,
          },
          injectTo: 'head',
        })),
  },
};

async function newestMs(path: string): Promise<number> {
  const found = await stat(path);
  if (!found.isDirectory()) return found.mtimeMs;
  const inside = await readdir(path);
  const times = await Promise.all(inside.map((name) => newestMs(join(path, name))));
  return Math.max(0, ...times);
}

/** When the last build ended, milliseconds since 1970; 0 when there is none. */
async function builtMs(): Promise<number> {
  const found = await stat(built).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return null;
    throw error;
  });
  return found?.mtimeMs ?? 0;
}

async function isStale(): Promise<boolean> {
  const sources = ['build.ts', 'index.html', 'public', 'src', 'worker'].map((name) =>
    newestMs(join(here, name)),
  );
  return Math.max(...(await Promise.all(sources))) > (await builtMs());
}

async function loadVite(): Promise<typeof import('vite') | null> {
  return import('vite').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ERR_MODULE_NOT_FOUND') return null;
    throw error;
  });
}

/** The few that can be set at all: the whole list is a hundred times as long, and no page could carry it. */
async function commonPasswords(): Promise<string> {
  const { dictionary } = await import('@zxcvbn-ts/language-common');
  return dictionary['passwords-common'].filter((each) => each.length >= SHORTEST_PASSWORD).join(' ');
}

async function build(): Promise<void> {
  if (process.argv.includes('--if-stale') && !(await isStale())) return;
  const vite = await loadVite();
  if (vite === null) {
    console.log('The pages were not built: Vite is not installed here.');
    return;
  }
  const define = { COMMON_PASSWORDS: JSON.stringify(await commonPasswords()) };
  await vite.build({
    ...COMMON,
    define,
    oxc: PREACT,
    plugins: [FETCH_EARLY],
    build: {
      outDir: 'dist',
      emptyOutDir: true,
      target: 'es2022',
      // The pages' security policy allows nothing but the service itself: no data: address, no inline script.
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      // How long it takes is nothing that whoever starts the service can do something about.
      rolldownOptions: {
        checks: { bundlerTimings: false },
        output: { codeSplitting: { groups: PIECES } },
      },
    },
  });
  await buildWorker(vite);
  await buildDrawer(vite, define);
  await compress();
  console.log('The pages are built in dashboards/dist.');
}

/** What keeps the pages on a device: built last, as it holds the names of all that the pages are made of. */
async function buildWorker(vite: typeof import('vite')): Promise<void> {
  const assets = (await readdir(join(here, 'dist', 'assets'))).sort();
  const files = [
    '/index.html',
    '/manifest.webmanifest',
    '/mark.svg',
    ...assets.map((name) => `/assets/${name}`),
  ];
  // The names of the assets, which change with their content, stand in the page or in one another.
  const version = createHash('sha256')
    .update(await readFile(built))
    .update(files.join(' '))
    .digest('hex');
  await vite.build({
    ...COMMON,
    publicDir: false,
    define: {
      SHELL_FILES: JSON.stringify(files),
      SHELL_VERSION: JSON.stringify(version.slice(0, 16)),
    },
    build: {
      outDir: 'dist',
      emptyOutDir: false,
      target: 'es2022',
      rolldownOptions: {
        checks: { bundlerTimings: false },
        input: join(here, 'worker', 'worker.ts'),
        output: { entryFileNames: 'worker.js', format: 'iife' },
      },
    },
  });
}

/** What draws pages in the service: the same code in one file, for no browser and so out of their reach. */
async function buildDrawer(
  vite: typeof import('vite'),
  define: Readonly<Record<string, string>>,
): Promise<void> {
  await vite.build({
    ...COMMON,
    define,
    publicDir: false,
    oxc: PREACT,
    // All of it must hold to one Preact.
    ssr: { noExternal: true },
    build: {
      ssr: join(here, 'src', 'draw.tsx'),
      outDir: 'dist-drawer',
      emptyOutDir: true,
      target: 'node20',
      rolldownOptions: { checks: { bundlerTimings: false }, output: { codeSplitting: false } },
    },
  });
}

/** Once, as small as it gets, beside each file: the service would do it for each visit, quickly and larger. */
async function compress(): Promise<void> {
  const dist = join(here, 'dist');
  const names = (await readdir(dist, { recursive: true })).filter((name) => TEXT.test(name));
  for (const name of names) {
    const text = await readFile(join(dist, name));
    await writeFile(join(dist, `${name}.br`), await promisify(brotliCompress)(text));
    await writeFile(join(dist, `${name}.gz`), await promisify(gzip)(text, { level: 9 }));
  }
}

await build();
