import { readdir, readFile } from 'node:fs/promises';
import { setTimeout as pause } from 'node:timers/promises';
import type { Crew, Post } from './crew.ts';

const EVERY_MS = 5000;

interface Sample {
  readonly mebibytes: number;
  readonly handles: number;
}

/** What a process that lived through the whole run held in the second third of it, and in the last. */
export interface Flatness {
  readonly who: string;
  readonly what: 'memory, MiB' | 'handles';
  readonly second: number;
  readonly last: number;
}

/** Looks at the spared processes until it is told to stop, by proc(5); answers nothing where there is no such thing. */
export async function watchVitals(crew: Crew, until: AbortSignal): Promise<Flatness[]> {
  const samples = crew.spared.map((post) => ({ post, taken: [] as Sample[] }));
  while (!until.aborted) {
    for (const { post, taken } of samples) {
      const sample = await sampleOf(post);
      if (sample !== null) taken.push(sample);
    }
    await pause(EVERY_MS, undefined, { signal: until }).catch(() => undefined);
  }
  return samples.flatMap(({ post, taken }) =>
    taken.length < 6
      ? []
      : [
          { who: post.role, what: 'memory, MiB', ...thirdsOf(taken.map(({ mebibytes }) => mebibytes)) },
          { who: post.role, what: 'handles', ...thirdsOf(taken.map(({ handles }) => handles)) },
        ],
  );
}

async function sampleOf({ process }: Post): Promise<Sample | null> {
  const folder = `/proc/${process.child.pid}`;
  try {
    const status = await readFile(`${folder}/status`, 'utf8');
    const handles = await readdir(`${folder}/fd`);
    return { mebibytes: Number(/^VmRSS:\s+(\d+) kB/m.exec(status)?.[1]) / 1024, handles: handles.length };
  } catch {
    // Another system, or a process that ended: that is noted elsewhere.
    return null;
  }
}

function thirdsOf(values: readonly number[]): { second: number; last: number } {
  const third = Math.floor(values.length / 3);
  return { second: median(values.slice(third, 2 * third)), last: median(values.slice(2 * third)) };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[sorted.length >> 1];
}
