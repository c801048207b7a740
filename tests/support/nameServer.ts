import { createSocket } from 'node:dgram';
import { Resolver } from 'node:dns/promises';

/** A name server that answers one thing whatever it is asked, and a resolver that asks it. */
export interface TestNameServer {
  /** Of version 4. */
  addresses: readonly string[];
  readonly resolver: Resolver;
  stop(): Promise<void>;
}

const HEADER_BYTES = 12;
const TYPE_A = 1;

export async function startNameServer(): Promise<TestNameServer> {
  const socket = createSocket('udp4');
  const resolver = new Resolver();
  const server: TestNameServer = {
    addresses: [],
    resolver,
    stop: () => new Promise((resolve) => socket.close(() => resolve())),
  };
  socket.on('message', (query, { port, address }) => {
    socket.send(answerTo(query, server.addresses), port, address);
  });
  await new Promise<void>((resolve) => socket.bind(0, '127.0.0.1', resolve));
  resolver.setServers([`127.0.0.1:${socket.address().port}`]);
  return server;
}

/** RFC 1035, section 4: the question again, and an address record for each address where it asks for those. */
function answerTo(query: Buffer, addresses: readonly string[]): Buffer {
  const nameEnd = query.indexOf(0, HEADER_BYTES);
  const question = query.subarray(HEADER_BYTES, nameEnd + 5);
  const records = query.readUInt16BE(nameEnd + 1) === TYPE_A ? addresses : [];
  const header = Buffer.alloc(HEADER_BYTES);
  query.copy(header, 0, 0, 2);
  // An answer, to be asked again for more; one question, so many answers.
  header.writeUInt16BE(0x8180, 2);
  header.writeUInt16BE(1, 4);
  header.writeUInt16BE(records.length, 6);
  return Buffer.concat([header, question, ...records.map(record)]);
}

/** The name is that of the question; class IN, to be kept for no time. */
function record(address: string): Buffer {
  return Buffer.from([
    0xc0,
    HEADER_BYTES,
    0,
    TYPE_A,
    0,
    1,
    0,
    0,
    0,
    0,
    0,
    4,
    ...address.split('.').map(Number),
  ]);
}
