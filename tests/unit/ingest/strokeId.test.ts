import { randomUUID } from 'node:crypto';
import { validate, version } from 'uuid';
import { expect, test } from 'vitest';
import { strokeId } from '../../../ingest/strokeId.ts';

const AT_MS = Date.UTC(2026, 4, 2, 16, 20, 11);
const KEYS = Array.from({ length: 50 }, (_, i) => `stroke-${i}`);

test('strokes of one instant stand in one order, whoever sent them', () => {
  const orderOf = (sender: string) =>
    KEYS.toSorted((a, b) => (strokeId(sender, a, AT_MS) < strokeId(sender, b, AT_MS) ? -1 : 1));
  const order = orderOf(randomUUID());
  expect(new Set(order).size).toBe(KEYS.length);
  for (let sender = 0; sender < 20; sender++) expect(orderOf(randomUUID())).toEqual(order);
});

test('each is another for another sender, key or time, and the same again', () => {
  const [a, b] = [randomUUID(), randomUUID()];
  const ids = [a, b].flatMap((sender) =>
    KEYS.flatMap((key) => [AT_MS, AT_MS + 1].map((atMs) => strokeId(sender, key, atMs))),
  );
  expect(new Set(ids).size).toBe(4 * KEYS.length);
  for (const id of ids) expect([validate(id), version(id)]).toEqual([true, 7]);
  expect(strokeId(a, KEYS[0], AT_MS)).toBe(ids[0]);
});
