import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/** WCAG 2.2 at levels A and AA, and what the makers of the rules call good practice. */
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
}

/** What axe-core finds against the page as it stands, one line each. Our own security policy stays in force. */
export async function violationsOn(page: Page): Promise<string[]> {
  // The page's policy forbids inline scripts: this one is run by the test's own hand in the page.
  if (!(await page.evaluate('"axe" in window'))) await page.evaluate(await readFile(AXE, 'utf8'));
  const violations = await page.evaluate<readonly Violation[]>(
    `axe.run({ runOnly: ${JSON.stringify(RULES)}, resultTypes: ['violations'] }).then((found) => found.violations)`,
  );
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 200)} ${failureSummary}`),
  );
}
