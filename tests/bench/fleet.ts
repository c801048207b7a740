import type pg from 'pg';
import { sendRequest } from '../support/request.ts';

export interface BenchFleet {
  readonly url: string;
  readonly person: string;
  readonly logger: string;
  readonly rooms: readonly string[];
}

/** Signs in and makes one coach with so many rooms and one logger. */
export async function makeFleet(url: string, rooms: number): Promise<BenchFleet> {
  const session = await sendRequest(url, 'POST', '/session', {
    body: { email: 'bench@example.com', password: 'a long enough secret' },
  });
  const token: string = session.body.token;
  const create = async (path: string, body: object) => {
    const answer = await sendRequest(url, 'POST', path, { token, body });
    if (answer.status !== 201) throw new Error(`${path} answered ${answer.status}: ${answer.text}`);
    return answer.body;
  };
  const coach = await create('/coaches', { name: 'Bench' });
  const logger = await create(`/coaches/${coach.id}/loggers`, { name: 'Bench', sensor: 'shunt' });
  const ids: string[] = [];
  for (let i = 0; i < rooms; i++) {
    const room = { name: `Room ${i}`, drive: 'in-wall', sides: ['front', 'rear'] };
    ids.push((await create(`/coaches/${coach.id}/rooms`, room)).id);
  }
  return { url, person: token, logger: logger.token, rooms: ids };
}

/**
 * Waits until every stroke of every room is analysed. Asks the database, not the service, which would be kept from its
 * work by the question.
 */
export async function analysed(client: pg.Client): Promise<void> {
  for (;;) {
    const { rows } = await client.query('select from room_progress where dirty_from is not null limit 1');
    if (rows.length === 0) return;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}
