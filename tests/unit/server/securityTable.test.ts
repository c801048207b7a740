import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));
const TABLE = readFileSync(`${ROOT}tests/security.md`, 'utf8');

/** Every file of the project, by its path. */
const FILES = execFileSync('git', ['ls-files'], { cwd: ROOT, encoding: 'utf8' }).split('\n');

const named = [...TABLE.matchAll(/`([\w./-]+\.(?:tsx?|md|json)|\.dockerignore)`/g)].map(([, name]) => name);

test('names files', () => {
  expect(named.length).toBeGreaterThan(40);
});

test.each([...new Set(named)])('%s is there', (name) => {
  expect(FILES.some((file) => file === name || file.endsWith(`/${name}`))).toBe(true);
});
