import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { expect, test } from 'vitest';

const root = new URL('../../../', import.meta.url);
const text = (path: string) => readFileSync(new URL(path, root), 'utf8');

/** The source files below a folder, from the top of the repository. */
const filesOf = (folder: string): string[] =>
  readdirSync(new URL(`${folder}/`, root), { recursive: true })
    .map((file) => `${folder}/${file}`)
    .filter((file) => file.endsWith('.ts'));

/** What a file imports or hands on of ours, types included. */
const importsOf = (file: string): string[] =>
  [...text(file).matchAll(/from '(\.[^']+)'/g)].map(([, path]) => posix.join(posix.dirname(file), path));

const analysis = new Map(filesOf('analysis').map((file) => [file, importsOf(file)]));

/** Each may import those before it, and none after it. */
const LAYERS = [
  'statistics',
  'motor',
  'stroke/signal',
  'stroke/rest',
  'stroke/read',
  'stroke/phases',
  'stroke/peaks',
  'stroke/doubts',
  'stroke',
  'baseline',
  'findings',
  'room',
];

const layerOf = (file: string): number => LAYERS.findIndex((layer) => file.startsWith(`analysis/${layer}/`));

test('a part of the analysis imports none that stands on it', () => {
  const upward = [...analysis].flatMap(([file, imports]) =>
    imports.filter((path) => layerOf(file) >= 0 && layerOf(path) > layerOf(file)).map((path) => [file, path]),
  );
  expect(upward).toEqual([]);
});

test('no file of the analysis imports itself by way of others', () => {
  const reached = (from: string): Set<string> => {
    const seen = new Set<string>();
    const left = [...(analysis.get(from) ?? [])];
    for (let file = left.pop(); file !== undefined; file = left.pop()) {
      if (seen.has(file)) continue;
      seen.add(file);
      left.push(...(analysis.get(file) ?? []));
    }
    return seen;
  };
  expect([...analysis.keys()].filter((file) => reached(file).has(file))).toEqual([]);
});

test('the textbook parts that nothing asks are those that the reader is told of', () => {
  const asked = new Set(
    ['analysis', 'ingest', 'server'].flatMap((folder) => filesOf(folder).flatMap(importsOf)),
  );
  const unasked = [...analysis.keys()].filter((file) => layerOf(file) >= 0 && !asked.has(file));
  const told = text('analysis/README.md')
    .split(/serve nothing here\s+yet/)[1]
    .split('\n\n')[0];
  const named = [...told.matchAll(/`(\w+\/\w+\.ts)`/g)].map(([, file]) => `analysis/${file}`);
  expect(named.sort()).toEqual(unasked.sort());
});

/** The names in a list, which stands right above and is told of. */
const IS_ONE_OF_LIST = /^export type \w+ = \(typeof \w+\)\[number\];/;

test('whatever the analysis exports is told of', () => {
  const untold = [...analysis.keys()].flatMap((file) => {
    const lines = text(file).split('\n');
    const exported = lines.flatMap((line, i) =>
      /^export (?:async )?(?:const|function|interface|type|class) \w/.test(line) && !IS_ONE_OF_LIST.test(line)
        ? [i]
        : [],
    );
    return exported.filter((i) => !lines[i - 1]?.endsWith('*/')).map((i) => `${file}: ${lines[i]}`);
  });
  expect(untold).toEqual([]);
});
