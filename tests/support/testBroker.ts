import { once } from 'node:events';
import { type AddressInfo, createServer, type Socket } from 'node:net';
import { Aedes } from 'aedes';
import { quietPort } from '../../server/database/embedded/quietPort.ts';

/** A real broker over TCP, in this process. */
export interface TestBroker {
  readonly url: string;
  readonly port: number;
  readonly aedes: Aedes;
  /** Cuts every connection at once and forgets everything, as a death does. */
  kill(): Promise<void>;
}

/** At a port that is free again for the next broker once this one was killed. */
export async function startBroker(port?: number): Promise<TestBroker> {
  const aedes = await Aedes.createBroker();
  const server = createServer(aedes.handle);
  const sockets = new Set<Socket>();
  server.on('connection', (socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
  });
  server.listen(port ?? (await quietPort()), '127.0.0.1');
  await once(server, 'listening');
  // A TCP server that listens has an address of this kind.
  const bound = (server.address() as AddressInfo).port;
  return {
    url: `mqtt://127.0.0.1:${bound}`,
    port: bound,
    aedes,
    kill: async () => {
      for (const socket of sockets) socket.destroy();
      server.close();
      await once(server, 'close');
      await new Promise<void>((resolve) => aedes.close(() => resolve()));
    },
  };
}
