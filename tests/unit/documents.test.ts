import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** Every file of the project, by its path. */
const FILES = execFileSync('git', ['ls-files'], { cwd: ROOT, encoding: 'utf8' }).split('\n');
const DOCUMENTS = FILES.filter((file) => file.endsWith('.md'));
const { scripts } = JSON.parse(readFileSync(`${ROOT}package.json`, 'utf8'));

const distinct = (found: Iterable<RegExpMatchArray>) => [...new Set([...found].map(([, name]) => name))];

describe.each(DOCUMENTS)('%s', (document) => {
  const text = readFileSync(`${ROOT}${document}`, 'utf8');

  test('names files that are there', () => {
    const named = distinct(
      text.matchAll(/`([\w./-]+\.(?:tsx?|md|mjs)|package(?:-lock)?\.json|\.dockerignore)`/g),
    );
    const isThere = (name: string) => FILES.some((file) => file === name || file.endsWith(`/${name}`));
    expect(named.filter((name) => !isThere(name))).toEqual([]);
  });

  test('names commands that there are', () => {
    const named = distinct(text.matchAll(/npm run ([\w:]+)/g));
    expect(named.filter((name) => !Object.hasOwn(scripts, name))).toEqual([]);
  });
});

test('the table of security names files', () => {
  const text = readFileSync(`${ROOT}tests/security.md`, 'utf8');
  expect([...text.matchAll(/`[\w./-]+\.ts`/g)].length).toBeGreaterThan(40);
});
