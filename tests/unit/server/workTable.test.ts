import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const SERVER = new URL('../../../server/', import.meta.url);

test('the table of work/ in the README names every file there once, and no other', () => {
  const readme = readFileSync(new URL('README.md', SERVER), 'utf8');
  const [, section] = readme.split('## Inside `work/`');
  const [table] = section.split('\n## ');
  const named = [...table.matchAll(/`(\w+)`/g)].map(([, name]) => name);
  const files = readdirSync(new URL('work/', SERVER)).map((file) => file.replace(/\.\w+$/, ''));
  expect(named.sort()).toEqual(files.sort());
});
