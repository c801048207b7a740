import { expect } from 'vitest';
import { type Asked, type Fleet, settled } from '../strokes/strokeFixture.ts';

/** Everything that can be read of a room, its ids replaced by keys, once nothing is pending. */
export async function readRoom(service: Asked, fleet: Fleet): Promise<string> {
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
  const keys = new Map((await listStrokes(service, fleet)).map(({ id, key }) => [id, key]));
  return JSON.stringify(parts)
    .replaceAll(/[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/g, (id) => keys.get(id) ?? id)
    .replaceAll(roomId, 'the room')
    .replaceAll(/"(id|createdAt|updatedAt)":"[^"]*"/g, '"$1":"…"');
}

/** Every stroke of the room, newest first, page by page. */
export async function listStrokes(
  service: Asked,
  { token, roomId }: Fleet,
): Promise<{ id: string; key: string }[]> {
  const items: { id: string; key: string }[] = [];
  for (let cursor = ''; ; ) {
    const answer = await service.request('GET', `/rooms/${roomId}/strokes?limit=500${cursor}`, { token });
    expect(answer.status, answer.text).toBe(200);
    items.push(...answer.body.items);
    if (answer.body.next === null) return items;
    cursor = `&cursor=${answer.body.next}`;
  }
}
