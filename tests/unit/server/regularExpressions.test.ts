import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { checkSync } from 'recheck';
import { parseAst } from 'vite';
import { expect, test } from 'vitest';

/**
 * Every regular expression that we wrote takes time in proportion to the text, or stands here with what keeps its text
 * short. (`recheck` works it out from the automaton, and searches for an attack where it cannot.)
 */
const BOUNDED = new Map([
  [String.raw`/^(.*?)[\s_.,:/-]+([^\s_.,:/-]+)$/`, 'titles of columns are cut at 200 characters'],
  [String.raw`/(^|[\s_]+)current$/i`, 'titles of columns are cut at 200 characters'],
  [String.raw`/\/+$/`, 'an environment variable is no input of others'],
]);

const ROOT = join(import.meta.dirname, '../../..');
const FOLDERS = ['analysis', 'dashboards/src', 'dashboards/worker', 'ingest', 'migrations', 'server'];
const SOURCE = /\.tsx?$/;
const AUTOMATON = { checker: 'automaton', timeout: 60_000 } as const;
const SEARCH = { checker: 'fuzz', timeout: 60_000 } as const;

test('no regular expression takes long on any text', { timeout: 300_000 }, async () => {
  const found = await regularExpressions();
  expect(found.size).toBeGreaterThan(40);
  const slow = [...found].filter(([, { pattern, flags }]) => !isSafe(pattern, flags)).map(([text]) => text);
  expect(slow.sort()).toEqual([...BOUNDED.keys()].sort());
});

test('the check knows a bad one', () => {
  expect(isSafe('^(a+)+$', '')).toBe(false);
  expect(isSafe('(?<=x)(a+)+$', '')).toBe(false);
});

interface Expression {
  readonly pattern: string;
  readonly flags: string;
}

function isSafe(pattern: string, flags: string): boolean {
  const said = checkSync(pattern, flags, AUTOMATON);
  const answer = said.status === 'unknown' ? checkSync(pattern, flags, SEARCH) : said;
  return answer.status === 'safe';
}

/** By how they are written. */
async function regularExpressions(): Promise<Map<string, Expression>> {
  const found = new Map<string, Expression>();
  for (const folder of FOLDERS) {
    const names = await readdir(join(ROOT, folder), { recursive: true });
    for (const name of names.filter((each) => SOURCE.test(each))) {
      const source = await readFile(join(ROOT, folder, name), 'utf8');
      const tree = parseAst(source, { lang: name.endsWith('x') ? 'tsx' : 'ts' });
      for (const one of expressionsIn(tree)) found.set(`/${one.pattern}/${one.flags}`, one);
    }
  }
  return found;
}

/** The nodes of the tree that the ESTree description calls a literal with a `regex`. */
function* expressionsIn(node: unknown): Generator<Expression> {
  if (typeof node !== 'object' || node === null) return;
  const { regex }: { regex?: Expression } = node;
  if (regex !== undefined) yield regex;
  for (const inner of Object.values(node)) yield* expressionsIn(inner);
}
