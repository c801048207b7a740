import { isIP } from 'node:net';
import { invalidField } from '../problems.ts';
import { hostOf, isPublicAddress } from './publicAddress.ts';

/**
 * Refuses what nothing would ever be sent to, so that whoever makes the webhook learns it at once. What a name leads to
 * is looked at each time something is sent.
 */
export function refuseUrl(address: string, toPrivate: boolean): void {
  const url = new URL(address);
  if (url.username !== '' || url.password !== '')
    throw invalidField('/url', 'No user and password may stand in it: what is sent is signed.');
  if (toPrivate) return;
  if (url.protocol !== 'https:') throw invalidField('/url', 'Must begin with https://.');
  const host = hostOf(url);
  if (isIP(host) !== 0 && !isPublicAddress(host))
    throw invalidField('/url', 'Must be an address of the public Internet.');
}
