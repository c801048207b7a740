import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type ChildOnDatabase, childOnDatabase } from '../../support/childOnDatabase.ts';
import { startChild } from '../../support/childService.ts';
import { startMailServer, type TestMailServer } from '../../support/mailServer.ts';
import { startReceiver, type WebhookReceiver } from '../../support/webhookReceiver.ts';

const WARNINGS = 40;

let mailServer: TestMailServer;
let receiver: WebhookReceiver;
let first: ChildOnDatabase;
let environment: Record<string, string>;

beforeAll(async () => {
  [mailServer, receiver] = await Promise.all([startMailServer(), startReceiver()]);
  environment = {
    SMTP_URL: mailServer.url,
    MAIL_FROM: 'rooms@example.com',
    PUBLIC_URL: 'https://rooms.example.com',
    WEBHOOKS_TO_PRIVATE: '1',
  };
  first = await childOnDatabase(environment);
});
afterAll(async () => {
  await first?.stop();
  await receiver?.stop();
  await mailServer?.stop();
});

/** So many rooms of one coach with a warning each, marked to be looked at now. */
const FINDINGS = `
  with coach as (select account_id, id from coaches), room as (
    insert into rooms (account_id, id, coach_id, name, drive, sides)
    select account_id, gen_random_uuid(), id, 'Room ' || n, 'cable', '{main}'
    from coach, generate_series(1, ${WARNINGS}) n
    returning account_id, id
  ), warning as (
    insert into warnings (account_id, id, room_id, kind, severity, opened_at, first_stroke_id, latest_stroke_id, headline,
      evidence, checks, cautions)
    select account_id, gen_random_uuid(), id, 'rising-draw', 'service', now(), id, id, 'It draws more.', '{}', '[]', '[]'
    from room
  )
  insert into rooms_to_tell (account_id, room_id, due_at) select account_id, id, now() from room`;

const ids = (): string[] => receiver.received.map(({ body }) => JSON.parse(body).data.warning.id);

test('two processes tell everything once; what one of them held when it was killed is told by the other', async () => {
  const token = await first.signIn();
  const ask = (method: string, path: string, body: object) => first.request(method, path, { token, body });
  await ask('POST', '/coaches', { name: `Coach ${randomUUID()}` });
  await ask('PATCH', '/settings/notices', { warningsFrom: 'watch' });
  await ask('POST', '/webhooks', { url: receiver.url });
  const second = startChild({ ...environment, DATABASE_URL: first.databaseUrl, ROLE: 'worker' }, 'node');
  await second.ready;

  const client = new pg.Client(first.databaseUrl);
  await client.connect();
  await client.query(FINDINGS);
  await receiver.untilReceived(5);
  await first.kill();
  // What was held is free when its time is over: that is now.
  await client.query('update webhooks set try_at = now()');
  while (new Set(ids()).size < WARNINGS) await receiver.untilReceived(receiver.received.length + 1);
  // The one that was under way when its process died may have come twice, under one id.
  const messages = receiver.received.map(({ headers }) => headers['webhook-id']);
  expect(new Set(messages).size).toBe(WARNINGS);
  expect(messages.length).toBeLessThanOrEqual(WARNINGS + 1);

  await client.query("update mail_notices set due_at = now() where state = 'waiting'");
  while ((await client.query("select from mail_notices where state = 'waiting'")).rowCount !== 0);
  const rooms = mailServer.received.join('').matchAll(/^Coach [\w-]+, (Room \d+): needs work\.\r$/gm);
  expect([...rooms].map(([, room]) => room).sort()).toEqual(
    Array.from({ length: WARNINGS }, (_, i) => `Room ${i + 1}`).sort(),
  );

  // A restart finds nothing to tell.
  const told = [receiver.received.length, mailServer.received.length];
  await first.start();
  await client.query('update rooms_to_tell set due_at = now()');
  await client.query('update mail_notices set due_at = now()');
  await first.request(
    'POST',
    `/webhooks/${(await client.query('select id from webhooks')).rows[0].id}/test`,
    {
      token: await first.signIn(),
    },
  );
  await receiver.untilReceived(told[0] + 1);
  expect(JSON.parse(receiver.received[told[0]].body).type).toBe('test');
  expect(mailServer.received).toHaveLength(told[1]);
  second.signalGroup('SIGTERM');
  expect(await second.exited).toBe(0);
  await client.end();
});
