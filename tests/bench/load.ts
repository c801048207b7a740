import { Agent, request } from 'node:http';

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
