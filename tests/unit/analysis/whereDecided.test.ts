import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { WARNING_KINDS } from '../../../analysis/warning.ts';

const text = (path: string) => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');

/** The rows of DEVELOPERS.md, Where a warning is decided: the kind and the files that are named beside it. */
const rows = text('DEVELOPERS.md')
  .split('## Where a warning is decided')[1]
  .split('\n## ')[0]
  .split('\n')
  .flatMap((line) => {
    const [kind, decidedIn, others] = line.split('|').slice(1);
    const files = [...`${decidedIn} ${others}`.matchAll(/`([\w/]+\.ts)`/g)].map(([, file]) => file);
    return files.length === 0 ? [] : [{ kind: kind.replaceAll(/[` ]/g, ''), files }];
  });

test('the developers are told of every kind of warning where it is decided', () => {
  expect(rows.map(({ kind }) => kind).sort()).toEqual([...WARNING_KINDS].sort());
});

test.each(rows)('$kind is decided where they are told', ({ kind, files }) => {
  const known = readdirSync(new URL('../../../analysis', import.meta.url), { recursive: true }).map(String);
  const folder = files[0].split('/').slice(0, -1).join('/');
  const paths = files.map((file) =>
    [`findings/${folder}/${file}`, `findings/${file}`, file].find((path) => known.includes(path)),
  );
  expect(files.filter((_, i) => paths[i] === undefined)).toEqual([]);
  expect(paths.some((path) => text(`analysis/${path}`).includes(`kind: '${kind}'`))).toBe(true);
});
