import { setTimeout as pause } from 'node:timers/promises';
import { type ChildService, startChild } from '../support/childService.ts';

type Role = 'web' | 'worker';

/** One place of the crew: a process, and the next one where it was killed. */
export interface Post {
  readonly role: Role;
  /** Null while it starts. */
  url: string | null;
  process: ChildService;
  /** How often it was killed. */
  kills: number;
}

/** Processes that share one database: two that serve and two that work. */
export interface Crew {
  readonly posts: readonly Post[];
  /** The first of each role is never killed: what it holds after a long time can be looked at. */
  readonly spared: readonly Post[];
  /** Any of those that serve. */
  readonly anyUrl: () => string;
  /** Kills one, and puts another in its place; false where it has not even begun to serve. */
  kill(post: Post): boolean;
  /** What went wrong on its own. */
  readonly faults: string[];
  stop(): Promise<void>;
}

const ROLES: readonly Role[] = ['web', 'worker', 'web', 'worker'];

export async function startCrew(environment: Readonly<Record<string, string>>): Promise<Crew> {
  const faults: string[] = [];
  let stopping = false;
  let turn = 0;

  const spawn = (role: Role) => startChild({ ...environment, ROLE: role, LOG_LEVEL: 'fatal' }, 'node');
  /** Follows a process to its end, and puts the next one in its place. */
  const follow = async (post: Post): Promise<void> => {
    while (!stopping) {
      const { kills, process: current } = post;
      post.url = await current.ready.catch(() => null);
      const code = await current.exited;
      post.url = null;
      if (stopping) return;
      if (post.kills === kills) {
        faults.push(
          `A process (${post.role}) ended by itself with ${code}: ${current.said.err.slice(-2000)}`,
        );
        await pause(1000);
      }
      post.process = spawn(post.role);
    }
  };
  const posts: Post[] = [];
  for (const role of ROLES) {
    const post: Post = { role, url: null, process: spawn(role), kills: 0 };
    // One after the other: the first migrates.
    post.url = await post.process.ready;
    posts.push(post);
  }
  const followed = posts.map(follow);
  const [web, worker] = posts;
  return {
    posts,
    spared: [web, worker],
    anyUrl: () => {
      const urls = posts.flatMap(({ role, url }) => (role === 'web' && url !== null ? [url] : []));
      // While none is there, whoever asks finds out.
      return urls[turn++ % urls.length] ?? 'http://127.0.0.1:9';
    },
    kill: (post) => {
      if (post.url === null) return false;
      post.url = null;
      post.kills += 1;
      post.process.signalGroup('SIGKILL');
      return true;
    },
    faults,
    stop: async () => {
      stopping = true;
      for (const { process } of posts) process.child.kill('SIGTERM');
      await Promise.all(followed);
    },
  };
}
