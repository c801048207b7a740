import { createHash } from 'node:crypto';
import { mkdir, open, readdir, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { OutgoingStroke } from './outgoingStroke.ts';

const REFUSED = 'refused';

/**
 * Strokes that wait to be sent, a file each, in the order of their beginning: what is in it survives the logger's
 * own end. What the service refused is set aside in a folder below.
 */
export class Spool {
  readonly #folder: string;

  constructor(folder: string) {
    this.#folder = folder;
  }

  async open(): Promise<void> {
    await mkdir(join(this.#folder, REFUSED), { recursive: true });
  }

  /** Answers once the stroke would survive a power cut. Keeping the same stroke again changes nothing. */
  async keep(stroke: OutgoingStroke): Promise<void> {
    const path = join(this.#folder, nameOf(stroke));
    const file = await open(`${path}.part`, 'w');
    await file.writeFile(JSON.stringify(stroke));
    await file.sync();
    await file.close();
    await rename(`${path}.part`, path);
    const folder = await open(this.#folder);
    await folder.sync();
    await folder.close();
  }

  /** The oldest strokes, at most so many. */
  async oldest(most: number): Promise<OutgoingStroke[]> {
    const names = (await readdir(this.#folder)).filter((name) => name.endsWith('.json')).sort();
    const texts = await Promise.all(
      names.slice(0, most).map((name) => readFile(join(this.#folder, name), 'utf8')),
    );
    // Written by `keep` and nobody else.
    return texts.map((text) => JSON.parse(text) as OutgoingStroke);
  }

  async forget(stroke: OutgoingStroke): Promise<void> {
    await rm(join(this.#folder, nameOf(stroke)), { force: true });
  }

  async setAside(stroke: OutgoingStroke): Promise<void> {
    await rename(join(this.#folder, nameOf(stroke)), join(this.#folder, REFUSED, nameOf(stroke)));
  }
}

/** Sorts by time; the key may hold what no file's name can. */
function nameOf({ startedAt, key }: OutgoingStroke): string {
  const when = new Date(startedAt).toISOString().replaceAll(/[^0-9TZ]/g, '');
  return `${when}-${createHash('sha256').update(key).digest('hex').slice(0, 16)}.json`;
}
