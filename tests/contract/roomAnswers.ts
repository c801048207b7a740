import { expect } from 'vitest';
import type { TestService } from '../support/service.ts';
import { type Fleet, settled } from './strokeFixture.ts';

/** Everything that can be read of a room, its ids replaced by keys, once nothing is pending. */
export async function readRoom(service: TestService, fleet: Fleet): Promise<string> {
  const { token, roomId } = fleet;
  const status = await settled(service, token, roomId);
  const get = async (path: string) => {
    const answer = await service.request('GET', `/rooms/${roomId}/${path}`, { token });
    expect(answer.status, answer.text).toBe(200);
    return answer.body;
  };
  const parts: unknown[] = [status, await get('warnings')];
  for (const measure of ['runningAmps', 'share', 'durationS']) {
    for (const direction of ['extend', 'retract']) {
      for (const side of ['front', 'rear']) {
        parts.push(await get(`trend?measure=${measure}&direction=${direction}&side=${side}`));
      }
    }
  }
  let text = JSON.stringify(parts);
  const { rows } = await service.pool.query('select id, key from strokes where room_id = $1', [roomId]);
  for (const { id, key } of rows) text = text.replaceAll(id, key);
  return text.replaceAll(roomId, 'the room').replaceAll(/"(id|createdAt|updatedAt)":"[^"]*"/g, '"$1":"…"');
}
