/// <reference lib="webworker" />

/** The pages' own files, and a name that changes with them: put in place by the build. */
declare const SHELL_FILES: readonly string[];
declare const SHELL_VERSION: string;

const PREFIX = 'shell-';
const THIS = PREFIX + SHELL_VERSION;
const PAGE = '/';
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

/** Every address of ours is the same page, which finds out itself what the address names. */
export async function shellAnswer(request: Request): Promise<Response> {
  const kept = await (await caches.open(THIS)).match(PAGE);
  return kept ?? fetch(request);
}

/** The files' names change with their content: what was kept under a name is what the service has. */
export async function cacheFirst(request: Request): Promise<Response> {
  return (await caches.match(request)) ?? fetch(request);
}
