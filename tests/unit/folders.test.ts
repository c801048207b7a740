import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { describe, expect, test } from 'vitest';

const text = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

/** The folders of one that holds several ideas, in the README's order, each with the files that it names there. */
function toldOf(readme: string, heading: string): Map<string, string[]> {
  const [, section] = text(readme).split(`## ${heading}`);
  const rows = section.split('\n## ')[0].matchAll(/^\| `(\w+)\/`\s*\|[^|]*\|(.*)\|$/gm);
  return new Map(
    [...rows].map(([, folder, files]) => [folder, [...files.matchAll(/`(\w+)`/g)].map(([, name]) => name)]),
  );
}

/** What a file imports or hands on, types included, from the top of its root. */
const importsOf = (root: string, file: string): string[] =>
  [...text(`${root}/${file}`).matchAll(/(?:from |import\()'(\.[^']+)'/g)].map(([, path]) =>
    posix.join(posix.dirname(file), path),
  );

describe.each([
  ['server/work', 'server/README.md', 'Inside `work/`', ['startWorker']],
  ['server/access', 'server/README.md', 'Inside `access/`', []],
  [
    'dashboards/src/room',
    'dashboards/README.md',
    'Inside `src/room`',
    ['RoomAnswer', 'RoomTools', 'StrokesSection'],
  ],
  ['dashboards/src/charts', 'dashboards/README.md', 'Inside `src/charts`', []],
  ['dashboards/src/components', 'dashboards/README.md', 'Inside `src/components`', []],
])('%s', (root, readme, heading, atTop) => {
  const told = toldOf(readme, heading);
  /** Below the root: `folder/file.ts`, and what stands above its folders and begins or puts together what is in them. */
  const files = readdirSync(new URL(`../../${root}/`, import.meta.url), { recursive: true })
    .map(String)
    .filter((file) => /\.(tsx?|mjs)$/.test(file));

  test('its table names every file of every folder there once, and no other', () => {
    const named = [...told].flatMap(([folder, names]) => names.map((name) => `${folder}/${name}`));
    const there = files.map((file) => file.replace(/\.\w+$/, ''));
    expect([...named, ...atTop].sort()).toEqual(there.sort());
  });

  test('a folder imports those that the table names before it, and none after it', () => {
    const order = [...told.keys()];
    const place = (path: string) => order.indexOf(path.split('/')[0]);
    const imports = files.flatMap((file) => importsOf(root, file).map((path) => [file, path] as const));
    const within = imports.filter(([file, path]) => place(file) >= 0 && !path.startsWith('../'));
    expect(within.length).toBeGreaterThan(0);
    expect(within.filter(([file, path]) => place(path) < 0 || place(path) > place(file))).toEqual([]);
  });
});

describe('server', () => {
  const [, table] = text('server/README.md').split('| folder ');
  const order = [...table.split('\n## ')[0].matchAll(/^\| `(\w+)\/`/gm)].map(([, folder]) => folder);
  const files = readdirSync(new URL('../../server/', import.meta.url), { recursive: true })
    .map(String)
    .filter((file) => file.endsWith('.ts'));
  /** Of a file beside the folders: that of the last folder which it leads to. */
  const place = (file: string): number =>
    file.includes('/') ? order.indexOf(file.split('/')[0]) : Math.max(-1, ...within(file).map(place));
  const within = (file: string) => importsOf('server', file).filter((path) => !path.startsWith('../'));

  test('its table names every folder there once, and no other', () => {
    const there = files.filter((file) => file.includes('/')).map((file) => file.split('/')[0]);
    expect([...order].sort()).toEqual([...new Set(there)].sort());
  });

  test('a folder imports those that the table names before it, and none after it', () => {
    const imports = files.flatMap((file) => within(file).map((path) => [file, path] as const));
    expect(imports.length).toBeGreaterThan(0);
    expect(imports.filter(([file, path]) => file.includes('/') && place(path) > place(file))).toEqual([]);
  });
});
