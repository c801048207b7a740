import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { expect, test } from 'vitest';

const SERVER = new URL('../../../server/', import.meta.url);
const text = (path: string) => readFileSync(new URL(path, SERVER), 'utf8');

/** The folders of `work/` in the README's order, each with the files that it names there. */
const toldOf = (): Map<string, string[]> => {
  const [, section] = text('README.md').split('## Inside `work/`');
  const rows = section.split('\n## ')[0].matchAll(/^\| `(\w+)\/`\s*\|[^|]*\|(.*)\|$/gm);
  return new Map(
    [...rows].map(([, folder, files]) => [folder, [...files.matchAll(/`(\w+)`/g)].map(([, name]) => name)]),
  );
};

/** Below `work/`: `folder/file.ts`. */
const files = readdirSync(new URL('work/', SERVER), { recursive: true })
  .map(String)
  .filter((file) => /\.(ts|mjs)$/.test(file));

/** What a file imports or hands on, types included, from the top of `work/`. */
const importsOf = (file: string): string[] =>
  [...text(`work/${file}`).matchAll(/(?:from |import\()'(\.[^']+)'/g)].map(([, path]) =>
    posix.join(posix.dirname(file), path),
  );

test('the table of work/ names every file of every folder there once, and no other', () => {
  const named = [...toldOf()].flatMap(([folder, names]) => names.map((name) => `${folder}/${name}`));
  const there = files.filter((file) => file !== 'startWorker.ts');
  expect(named.sort()).toEqual(there.map((file) => file.replace(/\.\w+$/, '')).sort());
});

test('a folder of work/ imports those that the table names before it, and none after it', () => {
  const order = [...toldOf().keys()];
  const place = (path: string) => order.indexOf(path.split('/')[0]);
  const imports = files.flatMap((file) => importsOf(file).map((path) => [file, path] as const));
  const within = imports.filter(([file, path]) => place(file) >= 0 && !path.startsWith('../'));
  expect(within.length).toBeGreaterThan(files.length);
  expect(within.filter(([file, path]) => place(path) < 0 || place(path) > place(file))).toEqual([]);
});
