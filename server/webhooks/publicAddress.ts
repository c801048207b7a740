import { type LookupAddress, NODATA } from 'node:dns';
import type { Resolver } from 'node:dns/promises';
import { isIP, type LookupFunction } from 'node:net';
import ipaddr from 'ipaddr.js';

/** What IANA gives out to the public Internet of version 6; all else there is set apart for something. */
const GLOBAL_V6 = ipaddr.parseCIDR('2000::/3');

/** A name or address leads to where nothing of ours may be sent. */
export class NotPublicError extends Error {
  override readonly name = 'NotPublicError';

  constructor(host: string) {
    super(`${host} is no address of the public Internet.`);
  }
}

/** Whether an IP address is one of the public Internet: not this machine, its networks, or anything set apart. */
export function isPublicAddress(text: string): boolean {
  const address = ipaddr.process(text);
  if (address.range() !== 'unicast') return false;
  return address.kind() === 'ipv4' || address.match(GLOBAL_V6);
}

/** The host of an address, without the brackets of version 6. */
export function hostOf(url: URL): string {
  return url.hostname.replace(/^\[|\]$/g, '');
}

/** Throws `NotPublicError` where the host is an IP address that is not public: no look-up is made of those. */
export function refuseLiteral(host: string): void {
  if (isIP(host) !== 0 && !isPublicAddress(host)) throw new NotPublicError(host);
}

/**
 * Looks a name up for a connection, and fails where any of its addresses is not public. The connection is made to what
 * this answers and to nothing else: the name cannot lead elsewhere a moment later.
 */
export function lookUpPublic(names: Resolver): LookupFunction {
  return (host, options, answer) => {
    addressesOf(names, host).then(
      (found) => {
        if (!found.every(({ address }) => isPublicAddress(address))) answer(new NotPublicError(host), []);
        else if (options.all === true) answer(null, found);
        else answer(null, found[0].address, found[0].family);
      },
      (error: NodeJS.ErrnoException) => answer(error, []),
    );
  };
}

/** At least one, of version 4 first. Rejects where there is none, as a look-up did that found nothing. */
async function addressesOf(names: Resolver, host: string): Promise<LookupAddress[]> {
  const [four, six] = await Promise.allSettled([names.resolve4(host), names.resolve6(host)]);
  const found = [
    ...addressesIn(four).map((address) => ({ address, family: 4 })),
    ...addressesIn(six).map((address) => ({ address, family: 6 })),
  ];
  if (found.length > 0) return found;
  if (four.status === 'rejected') throw four.reason;
  // A name may lead to another that has no address, which is no failure to everybody who looks it up.
  throw Object.assign(new Error(`${host} has no address.`), { code: NODATA });
}

function addressesIn(answer: PromiseSettledResult<string[]>): string[] {
  return answer.status === 'fulfilled' ? answer.value : [];
}
