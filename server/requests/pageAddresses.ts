/** Where the pages' own router (`dashboards/src/app.tsx`) has a page; a test holds this list to it. */
export const PAGE_ADDRESSES = [
  '/',
  '/new-coach',
  '/settings',
  '/notices',
  '/people',
  '/record',
  '/sign-ins',
  '/kept',
  '/set-up',
  '/join',
  '/reset',
  '/forgot',
  '/coaches/:id',
  '/rooms/:id',
  '/rooms/:id/compare',
  '/rooms/:id/upload',
  '/strokes/:id',
  '/unsubscribe/:token',
] as const;

const PATTERNS = PAGE_ADDRESSES.map((address) => new RegExp(`^${address.replaceAll(/:\w+/g, '[^/]+')}/*$`));

/** Whether there is a page at this path; what it names is another question. */
export function isPageAddress(path: string): boolean {
  return PATTERNS.some((pattern) => pattern.test(path));
}
