import { setTimeout as pause } from 'node:timers/promises';
import { postgresProcessesIn } from '../../server/database/embedded/processes.ts';
import { Random } from '../../server/demo/simulator/random.ts';
import type { Crew } from './crew.ts';

export interface Kills {
  web: number;
  worker: number;
  database: number;
}

interface ChaosParts {
  readonly crew: Crew;
  /** Where Postgres keeps its cluster. */
  readonly cluster: string;
  readonly seed: number;
  readonly meanSeconds: number;
  readonly until: AbortSignal;
}

/** Kills a process or the database each time that the time has come; answers how often what was killed. */
export async function killAtRandom({ crew, cluster, seed, meanSeconds, until }: ChaosParts): Promise<Kills> {
  const random = new Random(seed ^ 0x5eed);
  const kills: Kills = { web: 0, worker: 0, database: 0 };
  const expendable = crew.posts.filter((post) => !crew.spared.includes(post));
  for (;;) {
    // Ended early by the end of the run.
    await pause(1000 * meanSeconds * random.uniform(0.5, 1.5), null, { signal: until }).catch(
      () => undefined,
    );
    if (until.aborted) return kills;
    const post = random.pick([...expendable, null]);
    if (post === null) killPostgres(cluster);
    else if (!crew.kill(post)) continue;
    kills[post?.role ?? 'database'] += 1;
  }
}

/** All of its processes at once, as a machine that runs out of memory or of power does. */
function killPostgres(cluster: string): void {
  for (const pid of postgresProcessesIn(cluster, null)) {
    try {
      process.kill(pid, 'SIGKILL');
    } catch (error) {
      // One that ended by itself meanwhile, as its connection was closed.
      if (!(error instanceof Error && 'code' in error && error.code === 'ESRCH')) throw error;
    }
  }
}
