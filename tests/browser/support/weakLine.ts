import { createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';

/** A line to the service that can break in the middle of an answer. */
export interface WeakLine {
  readonly url: string;
  /** Of each answer to such a path half comes through from here on; null: all of every one. */
  readonly breakAt: (path: RegExp | null) => void;
  readonly close: () => Promise<void>;
}

/** Opens a line to the service at `url`, on a port of its own. It carries no live feed. */
export async function openWeakLine(url: string): Promise<WeakLine> {
  let broken: RegExp | null = null;
  const { hostname, port } = new URL(url);
  const server = createServer((asked, answer) => {
    const { method, url: path, headers } = asked;
    // What is compressed cannot be read by halves: the browser would tell that apart.
    const plain = { ...headers, 'accept-encoding': 'identity' };
    const onward = request({ hostname, port, method, path, headers: plain }, (said) => {
      answer.writeHead(said.statusCode ?? 502, said.headers);
      if (!broken?.test(path ?? '')) {
        said.pipe(answer);
        return;
      }
      const parts: Buffer[] = [];
      said.on('data', (part: Buffer) => parts.push(part));
      said.on('end', () => {
        const whole = Buffer.concat(parts);
        answer.write(whole.subarray(0, whole.length / 2), () => answer.destroy());
      });
    });
    onward.on('error', () => answer.destroy());
    asked.pipe(onward);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  // It listens on a port, not on a path.
  const { port: own } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${own}`,
    breakAt: (path) => {
      broken = path;
    },
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
