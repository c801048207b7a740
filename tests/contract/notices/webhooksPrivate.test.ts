import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { post } from '../../../server/webhooks/post.ts';
import { lookUpPublic } from '../../../server/webhooks/publicAddress.ts';
import { startNameServer, type TestNameServer } from '../../support/nameServer.ts';
import { type Member, startService, type TestService } from '../../support/service.ts';
import { startReceiver, type WebhookReceiver } from '../../support/webhookReceiver.ts';

let service: TestService;
let dealer: Member;
let receiver: WebhookReceiver;
let nameServer: TestNameServer;

beforeAll(async () => {
  service = await startService({ worker: false });
  dealer = await service.newAccount();
  receiver = await startReceiver();
  nameServer = await startNameServer();
});
afterAll(async () => {
  await receiver?.stop();
  await nameServer?.stop();
  await service?.stop();
});

describe('unless whoever runs the service allows it', () => {
  test.each([
    'http://programs.example.com/',
    'https://127.0.0.1/',
    'https://2130706433/',
    'https://0x7f.1/',
    'https://0.0.0.0/',
    'https://10.1.2.3/',
    'https://172.16.0.1/',
    'https://192.168.1.1/',
    'https://169.254.169.254/latest',
    'https://100.64.0.1/',
    'https://[::1]/',
    'https://[::ffff:127.0.0.1]/',
    'https://[fe80::1]/',
    'https://[fd00::1]/',
    'https://[64:ff9b::7f00:1]/',
  ])('no webhook leads to %s', async (url) => {
    const answer = await service.as(dealer.token, 'POST', '/webhooks', { url });
    expect([answer.status, answer.body.errors?.[0].pointer]).toEqual([422, '/url']);
  });

  test.each([
    ['its address', () => receiver.url.replace('http:', 'https:')],
    ['no TLS', () => receiver.url],
  ])('nothing is sent to %s, whatever stands in the database', async (_, url) => {
    const cut = new AbortController().signal;
    const attempt = await post(url(), {}, '{}', { toPrivate: false, cut });
    expect(attempt).toEqual({ error: 'It is no https address of the public Internet.' });
    expect(receiver.received).toEqual([]);
  });

  test.each([
    ['is not connected to where it leads to this machine', ['127.0.0.1'], null],
    ['is not connected to where one of its addresses does', ['93.184.216.34', '10.0.0.7'], null],
    ['is connected to where it leads to the Internet', ['93.184.216.34'], ['93.184.216.34']],
  ])('a name %s', async (_, addresses, connectedTo) => {
    nameServer.addresses = addresses;
    const found = await new Promise((resolve, reject) => {
      lookUpPublic(nameServer.resolver)('programs.example.com', { all: true }, (error, list) =>
        error === null ? resolve(list) : reject(error),
      );
    }).catch((error: Error) => error.name);
    expect(found).toEqual(
      connectedTo === null ? 'NotPublicError' : connectedTo.map((address) => ({ address, family: 4 })),
    );
  });
});
