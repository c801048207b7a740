/// <reference lib="webworker" />

/** The pages' own files, and a name that changes with them: put in place by the build. */
declare const SHELL_FILES: readonly string[];
declare const SHELL_VERSION: string;

const PREFIX = 'shell-';
const THIS = PREFIX + SHELL_VERSION;
/** As it is for everybody: under any other address it may come with somebody's answers. */
const PAGE = '/index.html';
/** Who looks at an empty page for longer is better off with the last answers on the device. */
const DRAWN_WITHIN_MS = 700;
/** A page that was opened with the former files may still fetch the rest of them. */
const KEPT_SHELLS = 2;

/** Fetches all files of this version past the browser's own cache, or fails as a whole: half a shell is none. */
export async function keepShell(): Promise<void> {
  const shell = await caches.open(THIS);
  await shell.addAll(SHELL_FILES.map((file) => new Request(file, { cache: 'reload' })));
}

/** Stores come in the order in which they were made. */
export async function forgetOlderShells(): Promise<void> {
  const shells = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== THIS);
  const tooOld = shells.slice(0, Math.max(0, shells.length - (KEPT_SHELLS - 1)));
  await Promise.all(tooOld.map((name) => caches.delete(name)));
}

/**
 * A page with its answer in it, as the service draws it; where the network lets it wait, the page as the device keeps it,
 * which is the same at every address of ours and finds out itself what that names.
 */
export async function pageAnswer(fromService: Promise<Response>): Promise<Response> {
  const shell = await caches.open(THIS);
  const drawn = fromService.then((answer) => (answer.ok ? answer : null)).catch(() => null);
  const late = new Promise<null>((resolve) => setTimeout(() => resolve(null), DRAWN_WITHIN_MS));
  return (await Promise.race([drawn, late])) ?? (await shell.match(PAGE)) ?? fromService;
}

/** The files' names change with their content: what was kept under a name is what the service has. */
export async function cacheFirst(request: Request): Promise<Response> {
  return (await caches.match(request)) ?? fetch(request);
}
