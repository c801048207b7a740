import { Agent, request } from 'node:http';
import { setTimeout as pause } from 'node:timers/promises';

export interface Target {
  readonly url: string;
  readonly headers: Readonly<Record<string, string>>;
}

/** Sends every body once over so many kept connections; answers seconds. Throws on any answer but 200. */
export async function sendAll(
  target: Target,
  bodies: readonly Buffer[],
  connections: number,
): Promise<number> {
  const agent = new Agent({ keepAlive: true, maxSockets: connections });
  let next = 0;
  const started = performance.now();
  const sender = async () => {
    while (next < bodies.length) await post(target, bodies[next++], agent);
  };
  await Promise.all(Array.from({ length: connections }, sender));
  agent.destroy();
  return (performance.now() - started) / 1000;
}

/** Sends every body once, so many a second whatever the answers take; answers milliseconds to each answer. */
export async function acknowledgementTimes(
  target: Target,
  bodies: readonly Buffer[],
  perSecond: number,
): Promise<number[]> {
  const agent = new Agent({ keepAlive: true });
  const started = performance.now();
  const times = await Promise.all(
    bodies.map(async (body, i) => {
      const dueMs = started + (1000 * i) / perSecond;
      await pause(Math.max(0, dueMs - performance.now()));
      await post(target, body, agent);
      return performance.now() - dueMs;
    }),
  );
  agent.destroy();
  return times;
}

function post(target: Target, body: Buffer, agent: Agent): Promise<void> {
  return new Promise((resolve, reject) => {
    const headers = { 'content-type': 'application/json', 'content-length': body.length, ...target.headers };
    const sent = request(target.url, { method: 'POST', agent, headers }, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.on('error', reject);
      answer.on('end', () => {
        const text = Buffer.concat(parts).toString();
        if (answer.statusCode === 200 && !text.includes('"rejected"')) resolve();
        else reject(new Error(`${target.url} answered ${answer.statusCode}: ${text.slice(0, 500)}`));
      });
    });
    sent.on('error', reject);
    sent.end(body);
  });
}
