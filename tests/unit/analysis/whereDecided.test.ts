import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { WARNING_KINDS } from '../../../analysis/warning.ts';

const text = (path: string) => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');

const filesOf = (folder: string): string[] =>
  readdirSync(new URL(`../../../analysis/findings/${folder}`, import.meta.url)).map(
    (file) => `${folder}/${file}`,
  );

/** The rows of the findings' README: the kind and the file that decides it. */
const rows = text('analysis/findings/README.md')
  .split('## Where each kind is decided')[1]
  .split('\n## ')[0]
  .split('\n')
  .flatMap((line) => {
    const [kind, decidedIn] = line.split('|').slice(1);
    const file = decidedIn?.match(/`([\w/]+\.ts)`/)?.[1];
    return file === undefined ? [] : [{ kind: kind.replaceAll(/[` ]/g, ''), file }];
  });

test('the developers are told of every kind of warning where it is decided', () => {
  expect(rows.map(({ kind }) => kind).sort()).toEqual([...WARNING_KINDS].sort());
});

test.each(rows)('$kind is decided where they are told', ({ kind, file }) => {
  const folder = file.includes('/') ? file.split('/')[0] : null;
  const files = folder === null ? [file] : filesOf(folder);
  expect(files).toContain(file);
  expect(files.some((path) => text(`analysis/findings/${path}`).includes(`kind: '${kind}'`))).toBe(true);
});

test.each(rows)('how $kind is decided is told', ({ kind }) => {
  const headings = text('analysis/findings/README.md').match(/^### .*$/gm) ?? [];
  expect(headings.some((heading) => heading.includes(`\`${kind}\``))).toBe(true);
});
