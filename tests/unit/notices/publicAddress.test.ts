import { expect, test } from 'vitest';
import { isPublicAddress } from '../../../server/webhooks/publicAddress.ts';

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
