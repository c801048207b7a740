import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { broken, type Finding, good } from './finding.ts';

const OLDEST_NODE = [20, 19] as const;
const PAGES = fileURLToPath(new URL('../../../dashboards/dist/index.html', import.meta.url));

/** Whether the program itself can run here. */
export async function examineProgram(): Promise<Finding[]> {
  const { node } = process.versions;
  const [major, minor] = node.split('.').map(Number);
  const isOld = major < OLDEST_NODE[0] || (major === OLDEST_NODE[0] && minor < OLDEST_NODE[1]);
  return [
    isOld
      ? broken(`Node ${node} is too old.`, `Install Node ${OLDEST_NODE.join('.')} or newer.`)
      : good(`Node ${node}.`),
    existsSync(PAGES)
      ? good('The pages are built.')
      : broken('The pages are not built.', 'Run npm install, or npm start, which builds them.'),
  ];
}
