import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { DEMO_SIGN_IN } from '../../../server/demo/demoSignIn.ts';
import { FIRST_PERSON } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { settled } from '../strokes/strokeFixture.ts';

const readme = await readFile(new URL('../../../README.md', import.meta.url), 'utf8');
const service = serviceOfTests();

test("README names the demo's account where commands have to be told which", () => {
  expect(readme).toContain(`--account '${DEMO_SIGN_IN.accountName}'`);
});

test("README's way to send a stroke stores one that can be measured", async () => {
  const { email, password } = FIRST_PERSON;
  const script = /```sh\n(url=[\s\S]*?)```/.exec(readme)?.[1] ?? '';
  const here = script
    .replace(/^url=.*$/m, `url=${service.url}`)
    .replace(/^who=.*$/m, `who='${JSON.stringify({ email, password })}'`);
  const { stdout } = await promisify(execFile)('bash', ['-euo', 'pipefail', '-c', here]);

  const { results } = JSON.parse(stdout);
  expect(results).toEqual([{ key: 'the first', strokeId: expect.any(String), outcome: 'stored' }]);
  const token = await service.signIn();
  const path = `/strokes/${results[0].strokeId}`;
  await settled(service, token, (await service.as(token, 'GET', path)).body.roomId);
  const { body } = await service.as(token, 'GET', path);
  expect(body.analysis).toMatchObject({
    status: 'done',
    sides: { main: { inrushAmps: 14.8, runningAmps: 5.1 } },
  });
});
