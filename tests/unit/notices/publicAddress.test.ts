import type { Resolver } from 'node:dns/promises';
import { expect, test } from 'vitest';
import { isPublicAddress, lookUpPublic } from '../../../server/webhooks/publicAddress.ts';

/** By the special-purpose address registries of IANA (RFC 6890). */
test.each([
  ['93.184.216.34', true],
  ['8.8.8.8', true],
  ['2606:4700::1111', true],
  ['0.0.0.0', false],
  ['10.0.0.1', false],
  ['100.64.0.1', false],
  ['127.0.0.1', false],
  ['169.254.169.254', false],
  ['172.31.255.255', false],
  ['192.168.0.1', false],
  ['198.18.0.1', false],
  ['224.0.0.1', false],
  ['255.255.255.255', false],
  ['::', false],
  ['::1', false],
  ['::7f00:1', false],
  ['::ffff:10.0.0.1', false],
  ['64:ff9b::a00:1', false],
  ['2001:db8::1', false],
  ['2002:7f00:1::', false],
  ['fc00::1', false],
  ['fe80::1', false],
  ['ff02::1', false],
])('%s: %s', (address, isPublic) => {
  expect(isPublicAddress(address)).toBe(isPublic);
});

/** Name servers that know these addresses, and say of others that there are none: by failing, or by an empty list. */
function namesWith(four: readonly string[] | Error, six: readonly string[] | Error): Resolver {
  const answer = (found: readonly string[] | Error) => async () => {
    if (found instanceof Error) throw found;
    return [...found];
  };
  // The look-up asks for nothing else.
  return { resolve4: answer(four), resolve6: answer(six) } as unknown as Resolver;
}

function lookUp(names: Resolver): Promise<string> {
  return new Promise((resolve) => {
    lookUpPublic(names)('news.example.com', {}, (error, address) =>
      resolve(error?.code ?? String(error ?? address)),
    );
  });
}

const REFUSED = Object.assign(new Error('refused'), { code: 'ECONNREFUSED' });

test.each<[string, readonly string[] | Error, readonly string[] | Error, string]>([
  ['the one of version 4', ['8.8.8.8'], ['2606:4700::1111'], '8.8.8.8'],
  ['the one of version 6 where there is no other', REFUSED, ['2606:4700::1111'], '2606:4700::1111'],
  [
    'none, as one of them is not public',
    ['8.8.8.8'],
    ['::1'],
    'NotPublicError: news.example.com is no address of the public Internet.',
  ],
  ['none, as the name servers fail', REFUSED, REFUSED, 'ECONNREFUSED'],
  ['none, as there are none of either version', [], [], 'ENODATA'],
  ['none, as there are none of version 4 and the rest fails', [], REFUSED, 'ENODATA'],
])('a name leads to %s', async (_, four, six, answer) => {
  expect(await lookUp(namesWith(four, six))).toBe(answer);
});
