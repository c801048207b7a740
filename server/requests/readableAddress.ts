import type { IncomingMessage } from 'node:http';

/**
 * The address that is looked for. A `%` with nothing behind it that it could mean stands for itself where people read
 * pages; the API refuses it, and says so.
 */
export function readableAddress({ url = '/' }: IncomingMessage): string {
  if (!url.includes('%') || isForMachines(url)) return url;
  const [path, ...query] = url.split('?');
  return isReadable(path) ? url : [path.replaceAll('%', '%25'), ...query].join('?');
}

/** Whether programs ask there, not people: they are answered in their own forms. */
export function isForMachines(url: string): boolean {
  return /^\/(api|assets)([/?]|$)/.test(url);
}

function isReadable(path: string): boolean {
  try {
    decodeURIComponent(path);
    return true;
  } catch (error) {
    if (error instanceof URIError) return false;
    throw error;
  }
}
