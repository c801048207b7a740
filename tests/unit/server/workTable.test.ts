import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const SERVER = new URL('../../../server/', import.meta.url);

test('the table of work/ in the README names every file of every folder there once, and no other', () => {
  const readme = readFileSync(new URL('README.md', SERVER), 'utf8');
  const [, section] = readme.split('## Inside `work/`');
  const [text] = section.split('\n## ');
  const named = text.split('\n').flatMap((row) => {
    const folder = row.match(/^\| `(\w+)\/`/)?.[1];
    const files = [...row.matchAll(/`(\w+)`/g)].map(([, name]) => `${folder}/${name}`);
    return folder === undefined ? [] : files;
  });
  const files = readdirSync(new URL('work/', SERVER), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => `${parentPath.split('/').at(-1)}/${name.replace(/\.\w+$/, '')}`);
  expect(named.sort()).toEqual(files.sort());
});
