import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import { buildApp } from '../../../server/app.ts';
import { loggerTo } from '../../../server/loggerTo.ts';
import { sendRequest } from '../../support/request.ts';
import { startService } from '../../support/service.ts';
import { newFleet, strokeBody } from '../strokes/strokeFixture.ts';

test('the log says no password and no token, at its most talkative', async () => {
  const service = await startService({ worker: false });
  let log = '';
  const logger = loggerTo('trace', { write: (line) => (log += line) });
  const app = await buildApp(service.app.database, { logger, setUpToken: 'the-secret-of-the-link' });
  const url = await app.listen({ port: 0, host: '127.0.0.1' });
  const dealer = await service.newAccount();
  const fleet = await newFleet(service, dealer.token);
  const secrets = [
    dealer.password,
    dealer.token,
    fleet.loggerToken,
    'the-secret-of-the-link',
    'a wrong password',
  ];
  const as = (token: string | undefined, method: string, path: string, body?: unknown) =>
    sendRequest(url, method, path, { token, body });

  const { email, password } = dealer;
  secrets.push((await as(undefined, 'POST', '/session', { email, password })).body.token);
  await as(undefined, 'POST', '/session', { email, password: 'a wrong password' });
  await sendRequest(url, 'GET', '/session', { headers: { cookie: `session=${dealer.token}` } });
  await as('slp_made-up', 'GET', '/session');
  await as(fleet.loggerToken, 'POST', '/strokes', strokeBody(fleet.roomId, 0));
  await as(fleet.loggerToken, 'POST', '/strokes', '{');
  const set = { token: 'the-secret-of-the-link', email, name: 'Nobody', password };
  await as(undefined, 'POST', '/set-up', set);
  const person = { email: `${randomUUID()}@example.com`, name: 'Ines', role: 'owner' };
  const { invitation } = (await as(dealer.token, 'POST', '/people', person)).body;
  secrets.push(invitation);
  await as(undefined, 'POST', `/invitations/${invitation}`, { password: 'short' });
  secrets.push((await as(undefined, 'POST', `/invitations/${invitation}`, { password })).body.token);
  await app.close();
  await service.stop();

  expect(log.split('\n').length).toBeGreaterThan(20);
  expect(log).toContain('/api/v1/invitations/[secret]');
  for (const secret of secrets) expect(log.includes(secret), 'a secret is in the log').toBe(false);
});
