import { expect, test } from 'vitest';
import type { StrokeToStore } from '../../../ingest/strokeToStore.ts';
import { rowsToSendTo } from '../../../server/access/scopes/rowsToSendTo.ts';
import { idOfBytes } from '../../../server/access/tokens/idOfBytes.ts';
import { isToBeNoted } from '../../../server/access/tokens/isToBeNoted.ts';

test('that somebody was seen is noted the first time and then no more than once a minute', () => {
  const ago = (ms: number) => new Date(Date.now() - ms);
  expect(isToBeNoted(null)).toBe(true);
  expect(isToBeNoted(ago(50_000))).toBe(false);
  expect(isToBeNoted(ago(61_000))).toBe(true);
});

test('bytes that are no id are that of nobody', () => {
  const bytes = Uint8Array.from({ length: 16 }, (_, i) => (i === 6 ? 0x70 : i === 8 ? 0x80 : i));
  expect(idOfBytes(bytes)).toBe('00010203-0405-7007-8009-0a0b0c0d0e0f');
  expect(idOfBytes(bytes.fill(0xee))).toBe('00000000-0000-0000-0000-000000000000');
  expect(idOfBytes(new Uint8Array(3))).toBe('00000000-0000-0000-0000-000000000000');
});

test('strokes of several senders open their accounts, and of a visitor that one coach alone', () => {
  const stroke = (account_id: string, coach_id: string | null, sender_id: string) =>
    ({ row: { account_id, coach_id, sender_id } }) as unknown as StrokeToStore;
  const strokes = [
    stroke('ours', null, 'board'),
    stroke('ours', null, 'bench'),
    stroke('theirs', 'gulwane', 'visitor'),
    stroke('theirs', 'gulwane', 'visitor'),
  ];
  expect(rowsToSendTo(strokes)).toEqual({
    accounts: ['ours'],
    visits: [{ accountId: 'theirs', coachId: 'gulwane' }],
    senders: ['board', 'bench', 'visitor', 'visitor'],
  });
});
