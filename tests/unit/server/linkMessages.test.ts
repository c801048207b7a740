import { expect, test } from 'vitest';
import { DecodeError } from '../../../ingest/decodeError.ts';
import { readHeader } from '../../../ingest/live/header.ts';
import { readSamples } from '../../../ingest/live/samples.ts';
import { LinkMessage } from '../../../server/schemas/strokesLive.ts';

const BEGIN = {
  type: 'begin',
  key: 'a',
  roomId: '0197b0c8-0000-7000-8000-000000000000',
  startedAt: '2026-05-02T16:20:11Z',
  sides: [{ side: 'front', rateHz: 50 }],
};
const HEADER = readHeader({ ...BEGIN, supply: { rateHz: 10 } });
const PIECE = { type: 'samples', key: 'a', seq: 0, side: 'front' };
const OF_SUPPLY = { type: 'samples', key: 'a', seq: 0 };

/** Whether the code that reads messages takes this one. */
function isRead(message: Record<string, unknown>): boolean {
  try {
    if (message.type === 'begin') readHeader(message);
    else readSamples(message, HEADER);
    return true;
  } catch (error) {
    if (!(error instanceof DecodeError)) throw error;
    return false;
  }
}

test.each([
  [true, BEGIN],
  [true, { ...BEGIN, token: 'sll_1', direction: 'extend', supply: { rateHz: 10 }, ambientC: -5.5 }],
  [true, { ...PIECE, amps: [1, null, 2.5] }],
  [true, { ...PIECE, milliamps: [1000, 2000] }],
  [true, { ...PIECE, counts: [1, 2], ampsPerCount: 0.01 }],
  [true, { ...PIECE, counts: [1, 2], ampsPerCount: -0.01 }],
  [true, { ...PIECE, token: 'sll_1', amps: [1] }],
  [true, { ...OF_SUPPLY, token: 'sll_1', volts: [12.6] }],
  [true, { ...OF_SUPPLY, volts: [12.6] }],
  [true, { ...OF_SUPPLY, volts: [null, 12.6] }],
  [true, { ...BEGIN, supply: { rateHz: 0.01 } }],
  [false, { ...BEGIN, supply: { rateHz: 0.009 } }],
  [false, { ...BEGIN, sides: [{ side: 'front', rateHz: 0.5 }] }],
  [false, { ...BEGIN, key: '' }],
  [false, { ...BEGIN, key: 'k'.repeat(201) }],
  [false, { ...BEGIN, direction: 'up' }],
  [false, { ...BEGIN, startedAt: 'yesterday' }],
  [false, { ...BEGIN, sides: [] }],
  [false, { ...BEGIN, sides: [{ side: 'front' }] }],
  [false, { ...BEGIN, sides: [{ side: 'front', rateHz: 5001 }] }],
  [false, { ...BEGIN, sides: [{ side: 'front', rateHz: 50, t: [0, 1] }] }],
  [false, { ...BEGIN, ambientC: 291 }],
  [false, { ...BEGIN, colour: 'red' }],
  [false, { ...PIECE, amps: [] }],
  [false, { ...PIECE, amps: ['1'] }],
  [false, { ...PIECE, seq: -1, amps: [1] }],
  [false, { ...PIECE, seq: 0.5, amps: [1] }],
  [false, { ...PIECE, milliamps: [0.5] }],
  [false, { ...PIECE, counts: [1] }],
  [false, { ...PIECE, amps: [1], milliamps: [1000] }],
  [false, { ...PIECE }],
  [false, { ...PIECE, volts: [12.6] }],
])('is %s: what is described is what is read: %j', (expected, message) => {
  expect([LinkMessage.safeParse(message).success, isRead(message)]).toEqual([expected, expected]);
});
